using Flushback.Dxf;

namespace Flushback.Inspection.Tests;

/// <summary>
/// Holes against pins. H7 is +0.010/0 up to 3 mm and +0.012/0 over 3 to 6 mm (ISO 286-2, table of limit deviations for holes);
/// reaming by hand takes 0.003 to 0.005 in on the diameter to 1/8 in, and 0.08 to 0.20 mm to 3 mm (reaming tables).
/// </summary>
public sealed class PinTests
{
    private static InspectionReport WithHoles(InspectionSettings settings, params double[] diameters) =>
        Sheet.Inspect(
            Sheet.Box("A1", 0, 0, 100, 20)
                + string.Concat(diameters.Select((d, i) => Sheet.Circle(10 + (10 * i), 10, d / 2, $"B{i}"))),
            settings
        );

    private static PinFit? FitOf(double diameter, InspectionSettings? settings = null) =>
        WithHoles(settings ?? Sheet.Defaults, diameter).Parts[0].Holes[0].Fit;

    [Theory]
    [InlineData(1.6, 1.610, "1.6 mm")]
    [InlineData(2.4, 2.410, "2.4 mm")]
    [InlineData(3.2, 3.212, "3.2 mm")]
    [InlineData(1.5875, 1.5975, "1/16 in")]
    [InlineData(2.38125, 2.39125, "3/32 in")]
    [InlineData(3.175, 3.187, "1/8 in")]
    public void A_hole_within_H7_fits_and_one_beside_it_does_not(double lowest, double highest, string name)
    {
        foreach (double diameter in new[] { lowest, highest })
        {
            PinFit fit = FitOf(diameter)!;
            Assert.Equal((name, lowest, highest), (fit.PinName, fit.LowestMm, fit.HighestMm));
            Assert.True(fit.Fits);
            Assert.Empty(WithHoles(Sheet.Defaults, diameter).Findings);
        }

        InspectionSettings asked = new() { PinDiametersMm = [lowest] };
        InspectionFinding small = WithHoles(asked, lowest - 0.06).Single(InspectionCodes.HoleFit);
        Assert.Equal(lowest - 0.06, small.Value!.Value, 1e-9);
        Assert.Equal(lowest, small.Limit);
        InspectionFinding large = WithHoles(asked, highest + 0.06).Single(InspectionCodes.HoleFit);
        Assert.Equal(highest + 0.06, large.Value!.Value, 1e-9);
        Assert.Equal(highest, large.Limit);
    }

    [Theory]
    [InlineData(0.0001, true)]
    [InlineData(-0.0001, false)]
    public void The_limits_are_kept_to_a_tenth_of_a_micrometre(double inside, bool fits)
    {
        Assert.Equal(fits, FitOf(2.4 + inside)!.Fits);
        Assert.Equal(fits, FitOf(2.41 - inside)!.Fits);
    }

    [Theory]
    [InlineData(2.0)]
    [InlineData(2.5)]
    [InlineData(6.35)]
    [InlineData(10)]
    public void A_hole_near_no_usual_pin_is_just_a_hole(double diameter)
    {
        Assert.Null(FitOf(diameter));
        Assert.Empty(WithHoles(Sheet.Defaults, diameter).Findings);
    }

    [Fact]
    public void A_pin_that_is_asked_about_is_what_its_holes_are_for()
    {
        InspectionSettings asked = new() { PinDiametersMm = [2.0, 4.7625] };
        Assert.Equal("2 mm", FitOf(2.005, asked)!.PinName);
        Assert.Equal("3/16 in", FitOf(4.77, asked)!.PinName);
        Assert.Null(FitOf(8, asked));
        Assert.False(FitOf(2.3, asked)!.Fits);
    }

    [Fact]
    public void A_hole_between_an_inch_and_a_metric_pin_is_unclear()
    {
        // 3/32 in H7 ends at 2.39125, 2.4 mm begins at 2.4.
        InspectionFinding finding = WithHoles(Sheet.Defaults, 2.395).Single(InspectionCodes.PinUnclear);
        Assert.Contains("3/32 in", finding.Message, StringComparison.Ordinal);
        Assert.Contains("2.4 mm", finding.Message, StringComparison.Ordinal);
        Assert.Equal(["B0"], finding.Handles.AsEnumerable());
    }

    [Fact]
    public void A_hole_for_the_other_system_than_the_rest_is_unclear()
    {
        InspectionReport report = WithHoles(Sheet.Defaults, 2.405, 3.205, 2.385);
        InspectionFinding finding = report.Single(InspectionCodes.PinUnclear);
        Assert.Equal(["B2"], finding.Handles.AsEnumerable());
        Assert.Empty(WithHoles(Sheet.Defaults, 2.385, 3.18, 1.59).Findings);
        Assert.Equal(
            ["B0"],
            WithHoles(Sheet.Defaults, 2.405, 2.385, 3.18).Single(InspectionCodes.PinUnclear).Handles.AsEnumerable()
        );
    }

    [Fact]
    public void A_hole_for_the_other_system_than_the_pin_asked_about_is_unclear()
    {
        InspectionSettings asked = new() { PinDiametersMm = [2.4] };
        Assert.Contains(
            "3/32 in",
            WithHoles(asked, 2.385).Single(InspectionCodes.PinUnclear).Message,
            StringComparison.Ordinal
        );
        Assert.Empty(WithHoles(asked, 2.405).Findings);
    }

    [Theory]
    [InlineData(2.4, 2.20, 2.32)]
    [InlineData(2.38125, 2.38125 - 0.127, 2.38125 - 0.0762)]
    public void A_hole_to_be_reamed_leaves_the_reamer_its_stock(double pin, double lowest, double highest)
    {
        InspectionSettings reamed = new() { HolesAreReamed = true, PinDiametersMm = [pin] };
        Assert.True(FitOf(lowest + 1e-4, reamed)!.Fits);
        Assert.True(FitOf(highest - 1e-4, reamed)!.Fits);
        Assert.Single(WithHoles(reamed, lowest - 1e-3).Findings, finding => finding.Code == InspectionCodes.HoleFit);
        Assert.Single(WithHoles(reamed, pin).Findings, finding => finding.Code == InspectionCodes.HoleFit);
    }

    [Fact]
    public void Holes_in_an_inch_drawing_are_for_inch_pins_where_both_would_do()
    {
        string file = Sheet.File(Sheet.Box("A1", 0, 0, 4, 1) + Sheet.Circle(1, 0.5, 0.045, "B1"), Sheet.InInches);
        InspectionSettings reamed = new() { HolesAreReamed = true };
        InspectionReport report = ProfileInspection.Run(Sheet.Read(file), reamed, CancellationToken.None);
        Assert.Equal(DrawingUnit.Inch, report.Unit);

        // 2.286 mm leaves 0.095 to 3/32 in and 0.114 to 2.4 mm: both are within what a reamer takes.
        Assert.Equal("3/32 in", report.Parts[0].Holes[0].Fit!.PinName);
        Assert.Equal("2.4 mm", FitOf(2.286, reamed)!.PinName);
    }
}
