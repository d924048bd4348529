using CsCheck;
using Flushback.Geometry.Distances;
using Flushback.Inspection.Tests.Referee;

namespace Flushback.Inspection.Tests;

/// <summary>Where the kerf runs, and the stock it leaves.</summary>
public sealed class CuttingTests
{
    [Fact]
    public void The_kerf_runs_outside_the_part_and_inside_its_holes()
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Box("A1", 0, 0, 60, 12) + Sheet.Circle(20, 6, 2, "A2", "PINS"),
            new InspectionSettings { KerfMm = 1 }
        );
        Assert.Empty(report.Findings);
        Assert.Equal(2, report.CutPaths.Length);
        Assert.Equal((false, "CUT", 0), (report.CutPaths[0].IsHole, report.CutPaths[0].Layer, report.CutPaths[0].Part));
        Assert.Equal((true, "PINS", 0), (report.CutPaths[1].IsHole, report.CutPaths[1].Layer, report.CutPaths[1].Part));

        // Steiner's formula for a convex outline: A + P r + pi r^2.
        Assert.Equal(720 + (144 * 0.5) + (0.25 * Math.PI), report.CutPaths[0].Path.AreaMm2, 1e-9);
        Assert.Equal(1.5 * 1.5 * Math.PI, report.CutPaths[1].Path.AreaMm2, 1e-9);
        Assert.Empty(Sheet.Inspect(Sheet.Box("A1", 0, 0, 60, 12)).CutPaths);
    }

    [Fact]
    public void Stock_for_grinding_is_added_outside_and_taken_from_the_holes()
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Box("A1", 0, 0, 60, 12) + Sheet.Circle(20, 6, 2, "A2"),
            new InspectionSettings { KerfMm = 1, GrindingStockMm = 0.2 }
        );
        Assert.Equal(720 + (144 * 0.7) + (0.49 * Math.PI), report.CutPaths[0].Path.AreaMm2, 1e-9);
        Assert.Equal(1.3 * 1.3 * Math.PI, report.CutPaths[1].Path.AreaMm2, 1e-9);
    }

    [Theory]
    [InlineData(3.9, false)]
    [InlineData(4.1, true)]
    public void A_hole_that_the_kerf_swallows_is_a_fault(double kerf, bool isSwallowed)
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Box("A1", 0, 0, 60, 12) + Sheet.Circle(20, 6, 2, "A2"),
            new InspectionSettings { KerfMm = kerf }
        );
        Assert.Equal(isSwallowed ? 1 : 2, report.CutPaths.Length);
        if (isSwallowed)
        {
            InspectionFinding finding = report.Single(InspectionCodes.KerfTooWide);
            Assert.Equal((Severity.Fault, kerf), (finding.Severity, finding.Limit));
            Assert.Equal(4, finding.Value!.Value, 1e-9);
            Assert.Equal(["A2"], finding.Handles.AsEnumerable());
        }
        else
        {
            report.HasNo(InspectionCodes.KerfTooWide);
        }
    }

    [Theory]
    [InlineData(20, true)]
    [InlineData(80, false)]
    public void A_hole_in_a_contour_that_does_not_close_has_no_cut_path(double x, bool isWithin)
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Line(0, 0, 60, 0, "A1")
                + Sheet.Line(60, 0, 60, 12, "A2")
                + Sheet.Line(60, 12, 0, 12, "A3")
                + Sheet.Line(0, 12, 0, 1, "A4")
                + Sheet.Circle(x, 6, 2, "A5"),
            new InspectionSettings { KerfMm = 0.2 }
        );
        Assert.Equal(isWithin ? 0 : 1, report.CutPaths.Length);
        if (isWithin)
        {
            InspectionFinding finding = report.Single(InspectionCodes.SideUnknown);
            Assert.Equal(["A5"], finding.Handles.AsEnumerable());
        }
        else
        {
            report.HasNo(InspectionCodes.SideUnknown);
        }
    }

    [Theory]
    [InlineData(1.9, false)]
    [InlineData(2.1, true)]
    public void A_slot_narrower_than_the_kerf_is_told(double kerf, bool isTold)
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Closed(
                "A1",
                (0, 0, 0),
                (40, 0, 0),
                (40, 20, 0),
                (21, 20, 0),
                (21, 8, 0),
                (19, 8, 0),
                (19, 20, 0),
                (0, 20, 0)
            ),
            new InspectionSettings { KerfMm = kerf }
        );
        Assert.Equal(isTold, report.Findings.Any(finding => finding.Code == InspectionCodes.KerfTooWide));
        Assert.Single(report.CutPaths);
    }

    [Fact]
    public void Every_path_keeps_half_a_kerf_from_the_contours_and_touches_none()
    {
        Gen.Select(AnyPart.WithHoles, Gen.Double[0.05, 1])
            .Sample(
                (part, kerf) =>
                {
                    InspectionReport report = Sheet.Inspect(
                        AnyPart.Entities(part.Outer, part.Holes),
                        new InspectionSettings { KerfMm = kerf }
                    );
                    return report.CutPaths.All(path =>
                        Math.Abs(
                            report
                                .Parts.SelectMany(found =>
                                    found.Holes.Select(hole => hole.Contour).Prepend(found.Contour)
                                )
                                .Min(contour => Distance.Between(contour, path.Path).DistanceMm) - (kerf / 2)
                        ) < 1e-6
                    );
                },
                iter: 200,
                print: sample => $"{sample.Item2:R} in\n{AnyPart.Entities(sample.Item1.Outer, sample.Item1.Holes)}"
            );
    }

    private static InspectionSettings Finished(double? stock) =>
        new()
        {
            FinishedLayer = "FINISHED",
            GrindingStockMm = stock,
            LeastWebMm = 0,
        };

    private static InspectionReport Around(double stock, double? wanted) =>
        Sheet.Inspect(
            Sheet.Box("A1", 0, 0, 60, 12) + Sheet.Box("F1", stock, 0.5, 59.5 - stock, 11, "FINISHED"),
            Finished(wanted)
        );

    [Theory]
    [InlineData(0.149, true)]
    [InlineData(0.15, false)]
    public void Stock_less_than_wanted_is_told_where_it_is_least(double stock, bool isTold)
    {
        InspectionReport report = Around(stock, 0.15);
        StockMeasure least = Assert.Single(report.Parts).LeastStock!;
        Assert.Equal(stock, least.LeastMm, 1e-9);
        Assert.Equal(stock, least.At.X, 1e-9);
        Assert.Equal(isTold ? 1 : 0, report.Findings.Length);
        Assert.All(
            report.Findings,
            finding => Assert.Equal((InspectionCodes.Stock, 0.15), (finding.Code, finding.Limit))
        );
    }

    [Fact]
    public void A_cut_inside_the_finished_outline_is_a_fault_with_its_depth()
    {
        InspectionReport report = Around(-0.2, null);
        Assert.Equal(-0.2, Assert.Single(report.Parts).LeastStock!.LeastMm, 1e-5);
        Assert.Equal(Severity.Fault, report.Single(InspectionCodes.Stock).Severity);
    }

    [Fact]
    public void The_finished_layer_is_not_cut_and_says_when_it_is_empty()
    {
        Assert.Equal(["CUT"], Around(0.2, null).CutLayers.AsEnumerable());
        InspectionReport none = Sheet.Inspect(Sheet.Box("A1", 0, 0, 60, 12), Finished(0.2));
        Assert.Equal("FINISHED", none.Single(InspectionCodes.Stock).Layer);
        Assert.Null(Assert.Single(none.Parts).LeastStock);
    }

    [Fact]
    public void How_far_a_finished_outline_comes_out_agrees_with_many_points_on_it()
    {
        Gen.Select(AnyPart.WithHoles, AnyPart.WithHoles)
            .Sample(
                (one, other) =>
                {
                    InspectionReport report = Sheet.Inspect(
                        Sheet.Closed("A1", one.Outer) + Sheet.Closed("F1", other.Outer, "FINISHED"),
                        Finished(null)
                    );
                    double least = Assert.Single(report.Parts).LeastStock!.LeastMm;
                    double sampled = other
                        .Outer.Edges.SelectMany(edge => Enumerable.Range(0, 200).Select(i => edge.PointAt(i / 200.0)))
                        .Min(point => one.Outer.SignedDistanceMm(point));

                    // Points at most 60 / 200 apart; where both lie inside, the true least is no larger than the sampled.
                    return least <= sampled + 2e-5 && least >= sampled - 0.4;
                },
                iter: 300
            );
    }
}
