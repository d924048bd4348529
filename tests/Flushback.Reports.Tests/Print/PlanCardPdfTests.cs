using Flushback.Geometry;
using Flushback.Mechanism.Plans;
using Flushback.Reports.Card;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests.Print;

/// <summary>The card as a printer puts it on paper, by another program at 600 dots an inch.</summary>
public sealed class PlanCardPdfTests
{
    // What a steel rule tells (common practice, no source).
    private const double RuleMm = 0.05;

    // Darker than the tint of metal.
    private const double Dark = 0.5;

    // Height of the rows of a picture looked at for an upright line.
    private const double StripMm = 1;

    [Theory]
    [MemberData(nameof(Plans.Names), MemberType = typeof(Plans))]
    public void It_is_one_sheet_of_A4_with_everything_within_Letter(string name)
    {
        byte[] pdf = Plans.Pdf(name);
        Assert.Contains("Pages:           1\n", Poppler.Info(pdf), StringComparison.Ordinal);
        RenderedPage page = Poppler.Render(pdf);
        Assert.Equal(210, page.WidthMm, RuleMm);
        Assert.Equal(297, page.HeightMm, RuleMm);

        // Printed at its size in the middle of Letter the sheet loses 8.8 mm above and below; printers leave 5 mm more.
        Assert.Equal(0, page.ShareOfInk(new Box(0, 0, 210, 14)));
        Assert.Equal(0, page.ShareOfInk(new Box(0, 283, 210, 297)));
    }

    [Theory]
    [MemberData(nameof(Plans.Names), MemberType = typeof(Plans))]
    public void It_says_what_the_page_says(string name)
    {
        string words = string.Join(
            ' ',
            Poppler.Words(Plans.Pdf(name)).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
        );
        CardSheet card = CardSheet.Of("Wagtail <no. 3>", Plans.Of(name));

        Assert.Contains(card.Name, words, StringComparison.Ordinal);
        Assert.Contains(card.Verdict, words, StringComparison.Ordinal);
        foreach (CardRow row in card.Rows)
        {
            Assert.Contains(row.Title, words, StringComparison.Ordinal);
            Assert.All(row.Readings, reading => Assert.Contains(reading.Thou, words, StringComparison.Ordinal));
        }

        Assert.All(card.Obstacles, sentence => Assert.Contains(sentence, words, StringComparison.Ordinal));
        Assert.Contains("ask locally", words, StringComparison.Ordinal);
    }

    [Fact]
    public void The_scale_bar_is_100_mm_long()
    {
        (RenderedPage page, Point origin, _) = Rendered("plan-reached");
        Point start = origin + (TangPicture.BarStart - Point.Origin);

        // Half a millimetre above the bar itself only its ticks are met.
        double first = UprightAt(page, start.X, start.Y + 1);
        double last = UprightAt(page, start.X + TangPicture.BarMm, start.Y + 1);
        Assert.Equal(TangPicture.BarMm, last - first, RuleMm);
    }

    /// <remarks>From the level arm of the pivot's cross to the line of the spine, and along the arm's upright to the window.</remarks>
    [Fact]
    public void A_distance_on_the_tang_is_four_times_its_size()
    {
        (RenderedPage page, Point origin, TangPicture picture) = Rendered("plan-reached");
        double spineMm = Plans.Of("plan-reached").Simulation.End.Placement.Knife.Blade.Bounds.MaxY;
        Vector shift = origin - Point.Origin;
        Point pivot = picture.At(Point.Origin) + shift;
        double x = picture.Window.MaxX + shift.X - 20;
        double spineY = picture.At(new Point(0, spineMm)).Y + shift.Y;

        // Inside the hole the arm crosses white, and the spine has white above and a tint below.
        double arm = page.MiddleOfInk(new Box(pivot.X - 2, pivot.Y - 1, pivot.X - 1, pivot.Y + 1), Dark).Y;
        double spine = page.MiddleOfInk(new Box(x - 5, spineY - 1, x + 5, spineY + 1), Dark).Y;
        Assert.Equal(spineMm * TangPicture.Scale, spine - arm, RuleMm);
    }

    [Fact]
    public void The_same_plan_gives_the_same_bytes() => Assert.Equal(Plans.Pdf(Plans.Most), Plans.Pdf(Plans.Most));

    [Fact]
    public void A_name_too_long_for_the_sheet_is_cut()
    {
        byte[] pdf = PlanCardPdf.Write(new string('W', 200), Plans.Of("plan-reached"));
        RenderedPage page = Poppler.Render(pdf);

        Assert.Equal(0, page.ShareOfInk(new Box(201, 0, 210, 297)));
        Assert.Contains("\u2026", Poppler.Words(pdf), StringComparison.Ordinal);
    }

    private static (RenderedPage Page, Point Origin, TangPicture Picture) Rendered(string name)
    {
        PlanReport plan = Plans.Of(name);
        CardSheet card = CardSheet.Of("Wagtail <no. 3>", plan);
        CardLayout layout = CardLayout.Of(card, plan);
        return (Poppler.Render(Plans.Pdf(name)), CardPages.Of(card, layout).Picture, layout.Picture);
    }

    /// <summary>Where an upright line near a place lies across.</summary>
    private static double UprightAt(RenderedPage page, double x, double y) =>
        page.MiddleOfInk(new Box(x - 2, y - (StripMm / 2), x + 2, y + (StripMm / 2))).X;
}
