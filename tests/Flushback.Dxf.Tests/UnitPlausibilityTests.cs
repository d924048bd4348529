using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>A drawing of an unlikely size is told with what it would be in other units.</summary>
public sealed class UnitPlausibilityTests
{
    /// <summary>The longer side of a shop's part: an example, no standard.</summary>
    private static readonly PlausibleSize Part = new(30, 400);

    [Theory]
    [InlineData(4.5, 1.2, DrawingUnit.Millimetre, "4.5 mm (0.177 in)", "in inches it would be 114.3 mm (4.5 in)")]
    [InlineData(1.2, 4.5, DrawingUnit.Millimetre, "4.5 mm (0.177 in)", "in inches it would be 114.3 mm (4.5 in)")]
    [InlineData(2540, 500, DrawingUnit.Inch, "2,540 mm (100 in)", "in millimetres it would be 100 mm (3.937 in)")]
    [InlineData(3937, 900, DrawingUnit.Millimetre, "3,937 mm", "in thousandths of an inch it would be 100 mm")]
    [InlineData(0.1, 0.02, DrawingUnit.Millimetre, "0.1 mm", "in metres it would be 100 mm")]
    public void A_drawing_read_in_the_wrong_unit_is_told_what_it_would_be(
        double widthMm,
        double heightMm,
        DrawingUnit unit,
        string size,
        string other
    )
    {
        DxfIssue issue = Assert.IsType<DxfIssue>(UnitPlausibility.Doubt(BoxOf(widthMm, heightMm), unit, Part));
        Assert.Equal(DxfIssueCodes.UnitDoubtful, issue.Code);
        Assert.Equal(DxfIssueKind.Notice, issue.Kind);
        Assert.Contains($"the drawing is {size}", issue.Sentence, StringComparison.Ordinal);
        Assert.Contains(other, issue.Sentence, StringComparison.Ordinal);
        Assert.EndsWith(".", issue.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(283.5, "points of 1/72 inch", 100.0125)]
    [InlineData(378, "pixels of 1/96 inch", 100.0125)]
    public void Numbers_of_a_page_or_screen_are_known_by_their_scale(double pixels, string name, double lengthMm)
    {
        // 283.5 and 378 at 72 and 96 to the inch are both 3.9375 in.
        UnitReading reading = UnitPlausibility
            .OtherReadings(pixels, DrawingUnit.Millimetre, new PlausibleSize(90, 110))
            .Single(reading => reading.Name == name);
        Assert.Null(reading.Unit);
        Assert.Equal(lengthMm, reading.LengthMm, 1e-9);
    }

    [Fact]
    public void What_no_unit_makes_plausible_is_told_as_such()
    {
        DxfIssue issue = UnitPlausibility.Doubt(BoxOf(450, 1), DrawingUnit.Millimetre, new PlausibleSize(430, 440))!;
        Assert.Contains("no other unit makes it that", issue.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_ends_of_the_range_and_an_empty_drawing_leave_no_doubt()
    {
        Assert.Null(UnitPlausibility.Doubt(BoxOf(30, 1), DrawingUnit.Millimetre, Part));
        Assert.Null(UnitPlausibility.Doubt(BoxOf(1, 400), DrawingUnit.Millimetre, Part));
        Assert.Null(UnitPlausibility.Doubt(Box.Empty, DrawingUnit.Millimetre, Part));
    }

    private static Box BoxOf(double widthMm, double heightMm) =>
        Box.Empty.Including(new Point(-5, 7)).Including(new Point(widthMm - 5, heightMm + 7));
}
