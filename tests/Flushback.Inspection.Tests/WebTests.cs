using CsCheck;
using Flushback.Geometry;
using Flushback.Inspection.Tests.Referee;

namespace Flushback.Inspection.Tests;

/// <summary>The thinnest web, by shapes whose webs anyone can see and by a search over many points.</summary>
public sealed class WebTests
{
    private static WebMeasure? ThinnestOf(string entities) => Sheet.Inspect(entities).Parts[0].ThinnestWeb;

    [Theory]
    [InlineData(0.79, true)]
    [InlineData(0.81, false)]
    public void Metal_between_two_holes_is_told_when_thinner_than_the_limit(double web, bool isTold)
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Circle(10, 10, 3, "A2") + Sheet.Circle(16 + web, 10, 3, "A3")
        );
        Assert.Equal(web, report.Parts[0].ThinnestWeb!.ThicknessMm, 1e-9);
        if (!isTold)
        {
            Assert.Empty(report.Findings);
            return;
        }

        InspectionFinding finding = report.Single(InspectionCodes.ThinWeb);
        Assert.Equal(["A2", "A3"], finding.Handles.Order(StringComparer.Ordinal));
        Assert.Equal(web, finding.Value!.Value, 1e-9);
        Assert.Equal(0.8, finding.Limit);
        Assert.True(finding.At!.Value.IsWithin(1e-9, new Point(13 + (web / 2), 10)));
    }

    [Fact]
    public void A_hole_near_the_border_leaves_a_web_of_the_difference()
    {
        WebMeasure web = ThinnestOf(Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Circle(10, 3.5, 3, "A2"))!;
        Assert.Equal(0.5, web.ThicknessMm, 1e-12);
    }

    [Fact]
    public void A_waist_is_a_web()
    {
        // Two half circles of radius 4 cut into a bar of 10 from both sides, their deepest points 2 apart.
        WebMeasure web = ThinnestOf(
            Sheet.Closed(
                "A1",
                (0, 0, 0),
                (16, 0, -1),
                (24, 0, 0),
                (40, 0, 0),
                (40, 10, 0),
                (24, 10, -1),
                (16, 10, 0),
                (0, 10, 0)
            )
        )!;
        Assert.Equal(2, web.ThicknessMm, 1e-12);
        Assert.True(web.From.MidpointTo(web.To).IsWithin(1e-9, new Point(20, 5)));
    }

    [Fact]
    public void A_bar_is_as_thick_as_its_parallel_sides_are_apart()
    {
        Assert.Equal(12, ThinnestOf(Sheet.Box("A1", 0, 0, 60, 12))!.ThicknessMm, 1e-12);
    }

    [Fact]
    public void A_curved_band_is_as_thick_as_its_radii_differ()
    {
        // Three quarters of a ring from radius 18 to 20.
        WebMeasure web = ThinnestOf(
            Sheet.Arc(0, 0, 20, 0, 270, "A1")
                + Sheet.Arc(0, 0, 18, 0, 270, "A2")
                + Sheet.Line(18, 0, 20, 0, "A3")
                + Sheet.Line(0, -18, 0, -20, "A4")
        )!;
        Assert.Equal(2, web.ThicknessMm, 1e-9);
    }

    [Fact]
    public void The_pointed_tip_of_a_blade_is_no_web()
    {
        // A triangle runs out to three points, a disc and a lens have nothing thicker to either side.
        Assert.Null(ThinnestOf(Sheet.Closed("A1", (0, 0, 0), (60, 0, 0), (0, 12, 0))));
        Assert.Null(ThinnestOf(Sheet.Circle(0, 0, 10, "A1")));
        Assert.Null(ThinnestOf(Sheet.Closed("A1", (0, 0, 0.2), (60, 0, 0.2))));
    }

    [Fact]
    public void A_tip_rounded_or_cut_off_is_no_web_either()
    {
        // The flat at the tip is square on the base line 60 away: that is the only stretch that does not run out.
        WebMeasure web = ThinnestOf(Sheet.Closed("A1", (0, 0, 0), (60, 5.9, 0), (60, 6.1, 0), (0, 12, 0)))!;
        Assert.Equal(60, web.ThicknessMm, 1e-9);
        double bulge = Math.Tan((Math.PI - (2 * Math.Atan(5.9 / 60))) / 4);
        Assert.Null(ThinnestOf(Sheet.Closed("A1", (0, 0, 0), (60, 5.9, bulge), (60, 6.1, 0), (0, 12, 0))));
    }

    [Fact]
    public void A_tongue_with_parallel_sides_is_a_web_and_told_once()
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Closed(
                "A1",
                (0, 0, 0),
                (30, 0, 0),
                (30, 9, 0),
                (50, 9, 0),
                (50, 9.5, 0),
                (30, 9.5, 0),
                (30, 20, 0),
                (0, 20, 0)
            )
        );
        InspectionFinding finding = report.Single(InspectionCodes.ThinWeb);
        Assert.Equal(0.5, finding.Value!.Value, 1e-12);
        Assert.Equal(0.5, report.Parts[0].ThinnestWeb!.ThicknessMm, 1e-12);
    }

    [Fact]
    public void A_corner_near_another_side_is_a_web()
    {
        // A notch's inner corner 0.6 from the lower side.
        WebMeasure web = ThinnestOf(Sheet.Closed("A1", (0, 0, 0), (40, 0, 0), (40, 12, 0), (20, 0.6, 0), (0, 12, 0)))!;
        Assert.Equal(0.6, web.ThicknessMm, 1e-12);
    }

    [Fact]
    public void A_part_that_crosses_itself_has_no_web_to_measure()
    {
        Assert.Null(ThinnestOf(Sheet.Closed("A1", (0, 0, 0), (20, 20, 0), (20, 0, 0), (0, 21, 0))));
    }

    [Fact]
    public void No_web_is_thinner_than_the_thinnest_by_a_search_over_many_points()
    {
        AnyPart.WithHoles.Sample(
            part =>
            {
                WebMeasure? web = ThinnestOf(AnyPart.Entities(part.Outer, part.Holes));
                List<double> sampled = SampledWebs.Of(part.Outer, part.Holes, stepMm: 0.08);
                return sampled.Count == 0 || web?.ThicknessMm <= sampled[0] + 1e-9;
            },
            iter: 60,
            print: Described
        );
    }

    [Fact]
    public void The_thinnest_web_grows_whichever_way_its_ends_move_along_the_border()
    {
        AnyPart.WithHoles.Sample(
            part =>
            {
                WebMeasure? web = ThinnestOf(AnyPart.Entities(part.Outer, part.Holes));
                return web is null
                    || (
                        SampledWebs.IsLeastAround(web, [part.Outer, .. part.Holes]) && SampledWebs.IsInMetal(web, part)
                    );
            },
            iter: 2_000,
            print: Described
        );
    }

    private static string Described((Outline Outer, Outline[] Holes) part) =>
        $"{ThinnestOf(AnyPart.Entities(part.Outer, part.Holes))} in\n{AnyPart.Entities(part.Outer, part.Holes)}";
}
