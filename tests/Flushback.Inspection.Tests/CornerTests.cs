using CsCheck;
using Flushback.Geometry;
using Flushback.Geometry.Offsets;
using Flushback.Inspection.Tests.Referee;

namespace Flushback.Inspection.Tests;

/// <summary>Inner corners and hollow arcs, and what a round cutter cannot reach.</summary>
public sealed class CornerTests
{
    private static InspectionSettings Cutter(double diameter) => new() { CutterDiameterMm = diameter, LeastWebMm = 0 };

    /// <summary>A bar with a notch 10 wide and 8 deep whose inner corners have a radius; 0 for sharp ones.</summary>
    private static string Notched(double radius)
    {
        // A quarter circle's bulge is tan(90 / 4 degrees); the notch turns right, away from the metal on the left.
        double bulge = -Math.Tan(Math.PI / 8);
        return radius == 0
            ? Sheet.Closed(
                "A1",
                (0, 0, 0),
                (40, 0, 0),
                (40, 20, 0),
                (25, 20, 0),
                (25, 12, 0),
                (15, 12, 0),
                (15, 20, 0),
                (0, 20, 0)
            )
            : Sheet.Closed(
                "A1",
                (0, 0, 0),
                (40, 0, 0),
                (40, 20, 0),
                (25, 20, 0),
                (25, 12 + radius, bulge),
                (25 - radius, 12, 0),
                (15 + radius, 12, bulge),
                (15, 12 + radius, 0),
                (15, 20, 0),
                (0, 20, 0)
            );
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(2)]
    public void The_least_inner_radius_is_the_one_drawn(double radius)
    {
        InspectedPart part = Assert.Single(Sheet.Inspect(Notched(radius)).Parts);
        Assert.Equal(radius, part.LeastInnerRadius!.RadiusMm, 1e-9);
        Assert.Equal(["A1"], part.LeastInnerRadius.Handles.AsEnumerable());
    }

    [Fact]
    public void A_part_without_hollows_has_no_inner_radius()
    {
        Assert.Null(
            Assert
                .Single(Sheet.Inspect(Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Circle(20, 10, 2, "A2")).Parts)
                .LeastInnerRadius
        );
        Assert.Equal(
            0,
            Assert
                .Single(Sheet.Inspect(Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Box("A2", 18, 8, 4, 4)).Parts)
                .LeastInnerRadius!.RadiusMm
        );
    }

    [Theory]
    [InlineData(1.49, 2)]
    [InlineData(1.5, 0)]
    public void A_radius_below_that_of_the_cutter_is_told(double radius, int told)
    {
        InspectionReport report = Sheet.Inspect(Notched(radius), Cutter(3));
        Assert.Equal(told, report.Findings.Count(finding => finding.Code == InspectionCodes.InnerRadius));
        foreach (InspectionFinding finding in report.Findings)
        {
            Assert.Equal(radius, finding.Value!.Value, 1e-9);
            Assert.Equal(1.5, finding.Limit);
        }
    }

    [Fact]
    public void A_sharp_corner_is_told_with_a_radius_of_none_and_only_when_a_cutter_is_asked_about()
    {
        InspectionReport report = Sheet.Inspect(Notched(0), Cutter(1));
        Assert.Equal(2, report.Findings.Length);
        Assert.All(report.Findings, finding => Assert.Equal((0.0, 0.5), (finding.Value, finding.Limit)));
        Assert.Empty(Sheet.Inspect(Notched(0)).Findings);
    }

    [Theory]
    [InlineData(10.1, true)]
    [InlineData(9.9, false)]
    public void A_bay_narrower_than_the_cutter_is_told(double cutter, bool isTold)
    {
        InspectionReport report = Sheet.Inspect(Notched(0), Cutter(cutter));
        InspectionFinding[] bays = [.. report.Findings.Where(finding => finding.Limit == cutter)];
        Assert.Equal(isTold ? 1 : 0, bays.Length);
        Assert.All(bays, bay => Assert.Equal(10, bay.Value!.Value, 1e-9));
    }

    [Theory]
    [InlineData(3.1, true)]
    [InlineData(2.9, false)]
    public void A_hole_smaller_than_the_cutter_is_a_note(double cutter, bool isTold)
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Circle(20, 10, 1.5, "A2"),
            Cutter(cutter)
        );
        Assert.Equal(isTold ? 1 : 0, report.Findings.Length);
        Assert.All(
            report.Findings,
            finding => Assert.Equal((Severity.Note, 1.5), (finding.Severity, Math.Round(finding.Value!.Value, 9)))
        );
    }

    [Fact]
    public void Two_parts_nearer_than_the_cutter_leave_no_way_between_them()
    {
        string entities = Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Box("A2", 42, 0, 40, 20, "SPRING");
        InspectionFinding finding = Sheet.Inspect(entities, Cutter(2.1)).Single(InspectionCodes.InnerRadius);
        Assert.Equal(2, finding.Value!.Value, 1e-9);
        Assert.Equal(["A1", "A2"], finding.Handles.Order(StringComparer.Ordinal));
        Assert.Empty(Sheet.Inspect(entities, Cutter(1.9)).Findings);
    }

    [Fact]
    public void A_fillet_of_short_lines_is_one_hollow()
    {
        // A fillet of radius 0.5 as 12 chords in a corner, and the rest of the notch's corner sharp.
        (double X, double Y, double Bulge)[] fillet =
        [
            .. Enumerable
                .Range(0, 13)
                .Select(i =>
                    (24.5 + (0.5 * Math.Cos(i * Math.PI / 24)), 12.5 - (0.5 * Math.Sin(i * Math.PI / 24)), 0.0)
                ),
        ];
        InspectionReport report = Sheet.Inspect(
            Sheet.Closed("A1", [(0, 0, 0), (40, 0, 0), (40, 20, 0), (25, 20, 0), .. fillet, (24, 0.5, 0)]),
            Cutter(3)
        );
        Assert.Single(
            report.Findings,
            finding => finding.Code == InspectionCodes.InnerRadius && finding.At!.Value.Y > 11
        );
    }

    /// <summary>
    /// The independent referee is the area a disc cannot enter, by offsetting the metal out and back in: where nothing is
    /// told, the disc reaches all but slivers; where something is left beyond those, something is told.
    /// </summary>
    [Fact]
    public void What_the_cutter_cannot_reach_is_told_and_nothing_else()
    {
        Gen.Select(AnyPart.WithHoles, Gen.Double[0.3, 6].Select(diameter => diameter * 1.000123))
            .Sample(
                (part, cutter) =>
                {
                    InspectionReport report = Sheet.Inspect(AnyPart.Entities(part.Outer, part.Holes), Cutter(cutter));
                    bool isTold = report.Findings.Any(finding => finding.Code == InspectionCodes.InnerRadius);
                    double deepest = KerfPath
                        .Around(new Region(part.Outer, [.. part.Holes]), cutter)
                        .Unreached.Select(place => place.DepthMm)
                        .DefaultIfEmpty(0)
                        .Max();
                    return isTold ? deepest > 0.0019 : deepest < 0.01;
                },
                iter: 200,
                print: sample => $"{sample.Item2} in\n{AnyPart.Entities(sample.Item1.Outer, sample.Item1.Holes)}"
            );
    }
}
