using Flushback.Geometry;
using Flushback.Patterns;
using Flushback.Reports.Print;
using Flushback.Reports.Templates;
using Flushback.Reports.Tests.Fixtures;
using Flushback.Reports.Tests.Print;

namespace Flushback.Reports.Tests.Templates;

/// <summary>The template as another program prints it, measured at 600 dots an inch.</summary>
public class TemplatePdfTests
{
    // What a steel rule shows (common practice, no source).
    private const double RuleMm = 0.05;

    public static TheoryData<Paper, bool> Forms =>
        new()
        {
            { Paper.A4, false },
            { Paper.A4, true },
            { Paper.Letter, false },
            { Paper.Letter, true },
        };

    [Theory]
    [MemberData(nameof(Forms))]
    public void Scale_bar_and_check_square_have_their_size(Paper paper, bool inInches)
    {
        RenderedPage page = Poppler.Render(TemplatePdf.Write("Dunnock", SamplePatterns.Default, paper, inInches));
        AssertScale(page, FormatOf(SamplePatterns.Default, paper, inInches), inInches);
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public void Every_hole_lies_where_it_is_drawn(Paper paper, bool inInches) =>
        AssertHoles(SamplePatterns.Default, paper, inInches);

    [Theory]
    [MemberData(nameof(SamplePairs.Names), MemberType = typeof(SamplePairs))]
    public void Every_hole_of_two_blades_lies_where_it_is_drawn(string name) =>
        AssertHoles(SamplePairs.Of(name).First, Paper.A4, inInches: false);

    [Theory]
    [InlineData(
        "shared",
        "First blade, cut one, 1.80 mm thick.",
        "Spring, cut one, ",
        "Liner or scale, cut two.",
        "Second blade, cut one, 1.80 mm thick.",
        "second pivot "
    )]
    [InlineData(
        "jack",
        "First spring, cut one, ",
        "Liner or scale, cut two.",
        "Second spring, cut one, ",
        "Liner between the springs, cut one, 0.50 mm thick."
    )]
    [InlineData(
        "opposite",
        "Liner or scale on the first blade's side, cut one.",
        "Liner or scale on the second blade's side, cut one.",
        "Liner between the springs, cut one, 0.50 mm thick."
    )]
    public void The_words_tell_every_piece_of_two_blades_and_how_many_are_cut(string name, params string[] told)
    {
        string words = Poppler.Words(
            TemplatePdf.Write("Dunnock", SamplePairs.Of(name).First, Paper.A4, inInches: false)
        );
        Assert.All(told, part => Assert.Contains(part, words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_knife_too_long_for_the_paper_is_spread_over_sheets_that_share_their_marks()
    {
        DrawnPattern pattern = SamplePatterns.Long;
        byte[] pdf = TemplatePdf.Write("Dunnock", pattern, Paper.Letter, inInches: true);
        Tiling tiling = TilingOf(pattern, Paper.Letter, inInches: true);
        Assert.Equal(2, tiling.Tiles.Length);
        string words = Poppler.Words(pdf);
        Assert.Contains("Sheet 1 of 2", words, StringComparison.Ordinal);
        Assert.Contains("Sheet 2 of 2", words, StringComparison.Ordinal);

        RenderedPage[] pages = [Poppler.Render(pdf, 1), Poppler.Render(pdf, 2)];
        Point[] shared = [.. RegisterMarks.On(tiling.Tiles[0])];
        Assert.NotEmpty(shared);
        Assert.Equal(shared, RegisterMarks.On(tiling.Tiles[1]));
        foreach ((RenderedPage page, Tile tile) in pages.Zip(tiling.Tiles))
        {
            AssertScale(page, tiling.Format, inInches: true);
            foreach (Point mark in shared)
            {
                AssertDrawnAbout(page, tile.View.Of(mark), 2.8);
            }
        }
    }

    [Fact]
    public void Sheets_laid_on_their_marks_continue_each_other()
    {
        DrawnPattern pattern = SamplePatterns.Long;
        byte[] pdf = TemplatePdf.Write("Dunnock", pattern, Paper.Letter, inInches: false);
        Tiling tiling = TilingOf(pattern, Paper.Letter, inInches: false);
        RenderedPage[] pages = [Poppler.Render(pdf, 1), Poppler.Render(pdf, 2)];

        // The spine beyond the seam runs level; the centre pin's hole in the handle is on the first sheet alone.
        Outline blade = DrawingOf(pattern, inInches: false).Together(pattern.Blade.Finished);
        Point onSpine = new(tiling.Shown(tiling.Tiles[0]).MaxX + 5, blade.Bounds.MaxY);
        Circle hole = PieceLayout.Of(pattern, TemplateDrawing.GapMm).Pieces[2].Holes[1].Circle;
        Assert.True(blade.Bounds.MaxX > onSpine.X);

        Point spine = OnDrawing(pages[1], tiling.Tiles[1], onSpine, 1);
        Point pin = OnDrawing(pages[0], tiling.Tiles[0], hole.Centre, hole.RadiusMm + 0.3);
        Assert.Equal(hole.Centre.Y - onSpine.Y, pin.Y - spine.Y, RuleMm);
    }

    [Fact]
    public void The_same_pattern_gives_the_same_bytes() =>
        Assert.Equal(
            TemplatePdf.Write("Dunnock", SamplePatterns.Rough, Paper.A4, inInches: false),
            TemplatePdf.Write("Dunnock", SamplePatterns.Rough, Paper.A4, inInches: false)
        );

    [Fact]
    public void The_words_tell_pieces_holes_stock_and_how_to_print()
    {
        string words = Poppler.Words(TemplatePdf.Write("Dunnock", SamplePatterns.Rough, Paper.A4, inInches: false));
        Assert.Contains("Blade, cut one. Holes: pivot ", words, StringComparison.Ordinal);
        Assert.Contains("0.25 mm of stock around it", words, StringComparison.Ordinal);
        Assert.Contains("Liner or scale, cut two.", words, StringComparison.Ordinal);
        Assert.Contains("Print at 100 %, not fitted to the page.", words, StringComparison.Ordinal);
    }

    private static void AssertHoles(DrawnPattern pattern, Paper paper, bool inInches)
    {
        byte[] pdf = TemplatePdf.Write("Dunnock", pattern, paper, inInches);
        Tiling tiling = TilingOf(pattern, paper, inInches);
        foreach (Tile tile in tiling.Tiles)
        {
            RenderedPage page = Poppler.Render(pdf, tile.Number);
            Box shown = tiling.Shown(tile).Grown(-5);
            foreach (PatternHole hole in PieceLayout.Of(pattern, TemplateDrawing.GapMm).Pieces.SelectMany(p => p.Holes))
            {
                if (tiling.Tiles.Length == 1 || shown.Contains(hole.Circle.Centre))
                {
                    AssertHole(page, tile, hole.Circle);
                }
            }
        }
    }

    private static void AssertScale(RenderedPage page, SheetFormat format, bool inInches)
    {
        Point at = TemplateFrame.BarAt;
        double length = inInches ? 101.6 : 100;
        double left = page.MiddleOfInk(new Box(at.X - 1, at.Y + 1.8, at.X + 1, at.Y + 2.8)).X;
        double right = page.MiddleOfInk(new Box(at.X + length - 1, at.Y + 1.8, at.X + length + 1, at.Y + 2.8)).X;
        Assert.Equal(length, right - left, RuleMm);

        Box square = TemplateFrame.SquareOn(format, inInches);
        double side = inInches ? 25.4 : 25;
        double low = square.Centre.Y - 5;
        double high = square.Centre.Y + 5;
        double west = page.MiddleOfInk(new Box(square.MinX - 1, low, square.MinX + 1, high)).X;
        double east = page.MiddleOfInk(new Box(square.MaxX - 1, low, square.MaxX + 1, high)).X;
        Assert.Equal(side, east - west, RuleMm);
        double south = page.MiddleOfInk(new Box(square.MinX + 4, square.MinY - 1, square.MaxX - 4, square.MinY + 1)).Y;
        double north = page.MiddleOfInk(new Box(square.MinX + 4, square.MaxY - 1, square.MaxX - 4, square.MaxY + 1)).Y;
        Assert.Equal(side, north - south, RuleMm);
    }

    // The hole's ring and its cross have their middle where the hole has.
    private static void AssertHole(RenderedPage page, Tile tile, Circle hole) =>
        AssertDrawnAbout(page, tile.View.Of(hole.Centre), hole.RadiusMm + 0.3);

    private static void AssertDrawnAbout(RenderedPage page, Point at, double reachMm)
    {
        Point seen = page.MiddleOfInk(new Box(at.X - reachMm, at.Y - reachMm, at.X + reachMm, at.Y + reachMm));
        Assert.True(at.IsWithin(RuleMm, seen), $"{at} is seen at {seen}.");
    }

    // As on the bench: the sheet is laid with its register mark where it belongs, then the place is looked for.
    private static Point OnDrawing(RenderedPage page, Tile tile, Point place, double reachMm)
    {
        Point mark = RegisterMarks.On(tile).First();
        return mark + (Seen(page, tile.View.Of(place), reachMm) - Seen(page, tile.View.Of(mark), 2.8));
    }

    private static Point Seen(RenderedPage page, Point at, double reachMm) =>
        page.MiddleOfInk(new Box(at.X - reachMm, at.Y - reachMm, at.X + reachMm, at.Y + reachMm));

    private static SheetFormat FormatOf(DrawnPattern pattern, Paper paper, bool inInches) =>
        TilingOf(pattern, paper, inInches).Format;

    private static Tiling TilingOf(DrawnPattern pattern, Paper paper, bool inInches) =>
        Tiling.Fewest(paper, DrawingOf(pattern, inInches).Bounds);

    private static TemplateDrawing DrawingOf(DrawnPattern pattern, bool inInches) =>
        new(pattern, TemplateLabels.Of(pattern, inInches));
}
