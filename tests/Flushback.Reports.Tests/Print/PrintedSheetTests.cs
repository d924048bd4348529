using Flushback.Geometry;
using Flushback.Reports.Print;

namespace Flushback.Reports.Tests.Print;

/// <summary>What another program puts on paper, measured at 600 dots an inch.</summary>
public class PrintedSheetTests
{
    // What the eye and a steel rule can tell (common practice, no source); a pixel is 0.042 mm.
    private const double RuleMm = 0.05;

    private static readonly Stroke _fine = new(0.15);

    [Theory]
    [InlineData(Paper.A4, false, 210.0, 297.0)]
    [InlineData(Paper.A4, true, 297.0, 210.0)]
    [InlineData(Paper.Letter, false, 215.9, 279.4)]
    [InlineData(Paper.Letter, true, 279.4, 215.9)]
    public void A_sheet_has_the_size_of_its_paper(Paper paper, bool isLandscape, double width, double height)
    {
        PrintSheet sheet = new(new SheetFormat(paper, isLandscape));
        sheet.Line(new Point(10, 10), new Point(20, 10), _fine);
        RenderedPage page = Poppler.Render(PdfFile.Write("a line", [sheet]));
        Assert.Equal(width, page.WidthMm, RuleMm);
        Assert.Equal(height, page.HeightMm, RuleMm);
    }

    [Theory]
    [InlineData(Paper.A4, false)]
    [InlineData(Paper.A4, true)]
    [InlineData(Paper.Letter, false)]
    [InlineData(Paper.Letter, true)]
    public void Lines_and_circles_lie_where_they_are_said_to(Paper paper, bool isLandscape)
    {
        PrintSheet sheet = new(new SheetFormat(paper, isLandscape));
        Point[] holes = [new(20.5, 30.25), new(180.125, 31.75), new(100.3, 190.6)];
        foreach (Point hole in holes)
        {
            sheet.Circle(new Circle(hole, 1.6), _fine);
        }

        sheet.Line(new Point(50, 60), new Point(50, 160), _fine);
        sheet.Line(new Point(60, 50), new Point(160, 50), _fine);
        RenderedPage page = Poppler.Render(PdfFile.Write("holes", [sheet]));
        foreach (Point hole in holes)
        {
            Assert.True(hole.IsWithin(RuleMm, page.MiddleOfInk(About(hole, 2))));
        }

        Assert.Equal(50, page.MiddleOfInk(new Box(48, 70, 52, 150)).X, RuleMm);
        Assert.Equal(50, page.MiddleOfInk(new Box(70, 48, 150, 52)).Y, RuleMm);
    }

    [Fact]
    public void A_view_enlarges_about_its_point()
    {
        PrintSheet sheet = new(new SheetFormat(Paper.A4));
        PaperView view = new(new Point(12, 7), new Point(100, 150), Scale: 4, Angle.FromDegrees(90));
        Point drawn = new(15, 9);
        sheet.Circle(view.Of(new Circle(drawn, 0.5)), _fine);
        RenderedPage page = Poppler.Render(PdfFile.Write("4:1", [sheet]));

        // Three along and two up, turned left: two to the left and three up, four times as large.
        Point expected = new(92, 162);
        Assert.True(expected.IsWithin(1e-12, view.Of(drawn)));
        Assert.True(expected.IsWithin(RuleMm, page.MiddleOfInk(About(expected, 3))));
    }

    [Fact]
    public void Both_scale_bars_have_their_length()
    {
        PrintSheet sheet = new(new SheetFormat(Paper.Letter));
        ScaleBar.Millimetres.DrawOn(sheet, new Point(20, 50));
        ScaleBar.Inches.DrawOn(sheet, new Point(20, 80));
        RenderedPage page = Poppler.Render(PdfFile.Write("scale", [sheet]));
        Assert.Equal(100, LengthOf(page, new Point(20, 50), 100), RuleMm);
        Assert.Equal(101.6, LengthOf(page, new Point(20, 80), 101.6), RuleMm);
    }

    [Fact]
    public void A_filled_region_spares_its_hole()
    {
        PrintSheet sheet = new(new SheetFormat(Paper.A4));
        sheet.Region([Square(50, 50, 40), Square(60, 60, 20)], _fine, new Fill(PrintColour.Grey(128)));
        RenderedPage page = Poppler.Render(PdfFile.Write("a frame", [sheet]));
        Assert.InRange(page.ShareOfInk(new Box(52, 52, 58, 88)), 0.49, 0.51);
        Assert.Equal(0, page.ShareOfInk(new Box(62, 62, 78, 78)));
    }

    [Fact]
    public void A_hatch_stays_in_its_region_with_its_spacing()
    {
        PrintSheet sheet = new(new SheetFormat(Paper.A4));
        Hatch hatch = new(new Stroke(0.2), SpacingMm: 2, Angle.FromDegrees(45));
        sheet.Region([Square(50, 50, 40), Square(60, 60, 20)], null, new Fill(null, hatch));
        RenderedPage page = Poppler.Render(PdfFile.Write("a hatch", [sheet]));

        // A tenth of the area is ink: 0.2 mm of every 2 mm.
        Assert.InRange(page.ShareOfInk(new Box(50, 50, 90, 60)), 0.09, 0.11);
        Assert.Equal(0, page.ShareOfInk(new Box(62, 62, 78, 78)));
        Assert.Equal(0, page.ShareOfInk(new Box(30, 50, 49, 90)));
    }

    [Fact]
    public void Nothing_is_seen_beyond_a_window()
    {
        PrintSheet sheet = new(new SheetFormat(Paper.A4));
        sheet.Within(
            new Box(50, 50, 100, 100),
            window => window.Line(new Point(20, 75), new Point(180, 75), new Stroke(1))
        );
        RenderedPage page = Poppler.Render(PdfFile.Write("a window", [sheet]));
        Assert.Equal(75, page.MiddleOfInk(new Box(51, 60, 99, 90)).X, RuleMm);
        Assert.Equal(0, page.ShareOfInk(new Box(10, 60, 49.9, 90)));
        Assert.Equal(0, page.ShareOfInk(new Box(100.1, 60, 200, 90)));
    }

    [Fact]
    public void Dashes_have_their_lengths()
    {
        PrintSheet sheet = new(new SheetFormat(Paper.A4));
        sheet.Line(new Point(20, 50), new Point(60, 50), new Stroke(0.5) { DashesMm = [6, 4] });
        RenderedPage page = Poppler.Render(PdfFile.Write("dashes", [sheet]));
        Assert.Equal(23, page.MiddleOfInk(new Box(18, 49, 28, 51)).X, RuleMm);
        Assert.Equal(33, page.MiddleOfInk(new Box(28, 49, 38, 51)).X, RuleMm);
    }

    private static double LengthOf(RenderedPage page, Point at, double length)
    {
        // The upper part of the end ticks, above the short ones.
        Box left = new(at.X - 1, at.Y + 1.8, at.X + 1, at.Y + 2.8);
        Box right = new(at.X + length - 1, at.Y + 1.8, at.X + length + 1, at.Y + 2.8);
        return page.MiddleOfInk(right).X - page.MiddleOfInk(left).X;
    }

    private static Box About(Point middle, double halfMm) =>
        new(middle.X - halfMm, middle.Y - halfMm, middle.X + halfMm, middle.Y + halfMm);

    private static Edge[] Square(double x, double y, double side)
    {
        Point[] corners = [new(x, y), new(x + side, y), new(x + side, y + side), new(x, y + side)];
        return [.. corners.Select((corner, i) => new Edge(corner, corners[(i + 1) % 4]))];
    }
}
