using System.Globalization;
using CsCheck;
using Flushback.Dxf.Tests;
using Flushback.Geometry;
using Flushback.Inspection.Tests.Referee;

namespace Flushback.Inspection.Tests;

/// <summary>What the report says does not depend on how the drawing lies, or in which order and direction it was drawn.</summary>
public sealed class InvarianceTests
{
    private static readonly InspectionSettings Everything = new()
    {
        CutterDiameterMm = 1.487,
        KerfMm = 0.2037,
        LeastWebMm = 1.987,
        GrindingStockMm = 0.1,
    };

    /// <summary>All values of a report that a motion leaves as they are.</summary>
    private static double[] ValuesOf(InspectionReport report) =>
        [
            report.CutLengthMm,
            report.Parts.Length,
            report.OpenContours.Length,
            .. report.Parts.SelectMany(part =>
                new[]
                {
                    part.AreaMm2,
                    part.CutLengthMm,
                    part.ThinnestWeb?.ThicknessMm ?? -1,
                    part.LeastInnerRadius?.RadiusMm ?? -1,
                    part.Holes.Length,
                }
            ),
            .. report.CutPaths.Select(path => path.Path.AreaMm2).Order(),
        ];

    private static void AssertSame(InspectionReport one, InspectionReport other)
    {
        Assert.Equal(Told(one), Told(other));
        Assert.All(ValuesOf(one).Zip(ValuesOf(other)), pair => Assert.Equal(pair.First, pair.Second, 1e-5));
    }

    /// <summary>Codes and values of the findings, a line each, in an order that does not depend on where they are.</summary>
    private static string Told(InspectionReport report) =>
        string.Join(
            '\n',
            report
                .Findings.Select(finding =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{finding.Code} {finding.Value:0.0000} {finding.Limit:0.0000}"
                    )
                )
                .Order(StringComparer.Ordinal)
        );

    [Fact]
    public void A_moved_turned_or_mirrored_drawing_has_the_same_values() =>
        Gen.Select(AnyPart.WithHoles, AnyPart.Motion)
            .Sample(
                (part, motion) =>
                    AssertSame(
                        Sheet.Inspect(AnyPart.Entities(part.Outer, part.Holes), Everything),
                        Sheet.Inspect(
                            AnyPart.Entities(
                                part.Outer.Transformed(motion),
                                part.Holes.Select(hole => hole.Transformed(motion))
                            ),
                            Everything
                        )
                    ),
                iter: 200,
                print: sample => $"{sample.Item2} of\n{AnyPart.Entities(sample.Item1.Outer, sample.Item1.Holes)}"
            );

    [Fact]
    public void Order_and_direction_of_the_entities_do_not_matter() =>
        Gen.Select(AnyPart.WithHoles, Gen.Int[0, 1 << 20])
            .Sample(
                (part, seed) =>
                {
                    Random random = new(seed);
                    string[] entities =
                    [
                        .. part
                            .Holes.Prepend(part.Outer)
                            .SelectMany(loop => loop.Edges)
                            .Select(
                                (edge, i) =>
                                    Open(
                                        string.Create(CultureInfo.InvariantCulture, $"C{i}"),
                                        random.Next(2) == 0 ? edge : edge.Reversed
                                    )
                            ),
                    ];
                    random.Shuffle(entities);
                    AssertSame(
                        Sheet.Inspect(AnyPart.Entities(part.Outer, part.Holes), Everything),
                        Sheet.Inspect(string.Concat(entities), Everything)
                    );
                },
                iter: 200
            );

    [Fact]
    public void The_same_drawing_gives_the_same_report() =>
        AnyPart.WithHoles.Sample(
            part =>
            {
                string entities = AnyPart.Entities(part.Outer, part.Holes);
                Assert.Equal(
                    Sheet.Inspect(entities, Everything).Findings.Select(finding => finding.Message),
                    Sheet.Inspect(entities, Everything).Findings.Select(finding => finding.Message)
                );
            },
            iter: 20
        );

    [Fact]
    public void Twenty_thousand_entities_take_seconds_at_most()
    {
        // A thousand plates of eighteen lines each with two holes, and one outline of short lines.
        string plates = string.Concat(
            Enumerable
                .Range(0, 1000)
                .Select(i =>
                {
                    (double x, double y) = (60 * (i % 40), 30 * (i / 40));
                    string lines = string.Concat(
                        Enumerable
                            .Range(0, 18)
                            .Select(k =>
                            {
                                (double a, double b) = (k * Math.Tau / 18, (k + 1) * Math.Tau / 18);
                                return Sheet.Line(
                                    x + (25 * Math.Cos(a)),
                                    y + (12 * Math.Sin(a)),
                                    x + (25 * Math.Cos(b)),
                                    y + (12 * Math.Sin(b)),
                                    ""
                                );
                            })
                    );
                    return lines + Sheet.Circle(x - 8, y, 1.2, "") + Sheet.Circle(x + 8, y, 1.2, "");
                })
        );
        ProcessorTime clock = ProcessorTime.OfThisThread();
        InspectionReport report = Sheet.Inspect(plates, Everything);
        Assert.Equal(1000, report.Parts.Length);
        Assert.InRange(clock.Spent, TimeSpan.Zero, TimeSpan.FromSeconds(30));
    }

    [Fact]
    public void One_outline_of_twenty_thousand_short_lines_takes_seconds_at_most()
    {
        const int count = 20_000;
        (double X, double Y, double Bulge)[] corners =
        [
            .. Enumerable
                .Range(0, count)
                .Select(i => i * Math.Tau / count)
                .Select(a => (110 * Math.Cos(a), (14 + (2 * Math.Cos(9 * a))) * Math.Sin(a), 0.0)),
        ];
        ProcessorTime clock = ProcessorTime.OfThisThread();
        InspectionReport report = Sheet.Inspect(Sheet.Closed("A1", corners), Everything);
        Assert.Single(report.Parts);
        Assert.InRange(clock.Spent, TimeSpan.Zero, TimeSpan.FromSeconds(30));
    }

    private static string Open(string handle, Edge edge) =>
        Sheet.Entity("LWPOLYLINE", "CUT", handle)
        + "90\n2\n70\n0\n"
        + Sheet.Groups((10, edge.Start.X), (20, edge.Start.Y), (42, edge.Bulge), (10, edge.End.X), (20, edge.End.Y));
}
