using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Geometry;
using Flushback.Inspection;
using Flushback.Inspection.Repair;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>Inspections for the tests, put together by hand so that they hold everything a report can show.</summary>
internal static class Inspections
{
    public static readonly RepairedDrawing Copy = new(
        [],
        ["LINE 2F on layer SPRING lay on LINE 2E and was left out."],
        ["The contour of entities 31 and 32 on layer SPRING does not close."]
    );

    private static readonly Dictionary<string, (Func<InspectionReport> Make, RepairedDrawing? Copy)> All = new()
    {
        ["inspection-sound"] = (Sound, null),
        ["inspection-bad"] = (Bad, Copy),
        ["inspection-nothing"] = (Nothing, new RepairedDrawing([], [], [])),
    };

    public static TheoryData<string> Names => [.. All.Keys];

    public static InspectionReport Report(string name) => All[name].Make();

    public static string Text(string name) =>
        InspectionTextReport.Write("Heron, sheet 2", All[name].Make(), All[name].Copy);

    public static string Page(string name) =>
        InspectionHtmlReport.Write("Heron, sheet 2", All[name].Make(), All[name].Copy);

    /// <summary>A bar of 60 by 12 mm with two pin holes and a slot, and another bar; the path of a 0.2 mm kerf.</summary>
    public static InspectionReport Sound()
    {
        InspectedPart liner = Part(
            "LINER",
            new Box(0, 0, 60, 12),
            Hole("LINER", new Point(6, 6), 2.405, new PinFit(2.4, "2.4 mm", 2.4, 2.41, 2.405)),
            Hole("LINER", new Point(54, 6), 2.386, new PinFit(2.38125, "3/32 in", 2.38125, 2.39125, 2.386)),
            Hole("LINER", new Point(46, 6), 6, null),
            new InspectedHole("LINER", Bar(new Box(20, 4, 36, 8)), null, ["2A"])
        ) with
        {
            ThinnestWeb = new WebMeasure(4, new Point(20, 4), new Point(20, 0)),
            LeastInnerRadius = new InnerRadius(0, new Point(20, 4), ["2A"]),
            LeastStock = new StockMeasure(0.2, new Point(0, 6)),
        };
        InspectedPart spring = Part("SPRING", new Box(0, 20, 66, 25));
        return new InspectionReport
        {
            Unit = DrawingUnit.Millimetre,
            CutLayers = ["LINER", "SPRING"],
            Parts = [liner, spring],
            OpenContours = [],
            Findings = [],
            Repairs = ["TEXT on layer NOTES (line 581) is no outline and was left out."],
            Bounds = new Box(0, 0, 66, 25),
            CutLengthMm = liner.CutLengthMm + spring.CutLengthMm,
            CutPaths =
            [
                new CutPath("LINER", Bar(new Box(-0.1, -0.1, 60.1, 12.1)), IsHole: false, Part: 0),
                new CutPath("LINER", Bar(new Box(20.1, 4.1, 35.9, 7.9)), IsHole: true, Part: 0),
            ],
        };
    }

    /// <summary>Faults, warnings and a note, some of them at one place, one of them nowhere, in a drawing in inches.</summary>
    public static InspectionReport Bad()
    {
        Point end = new(66.15, 20);
        OpenContour open = new("SPRING", ["31", "32"], new Point(66, 20), end, 131.2)
        {
            Edges = [new Edge(new Point(66, 20), new Point(0, 22.5), -0.1), new Edge(new Point(0, 22.5), end)],
        };
        InspectedPart liner = Part(
            "LINER",
            new Box(0, 0, 60, 12),
            Hole("LINER", new Point(6, 6), 2.45, new PinFit(2.4, "2.4 mm", 2.4, 2.41, 2.45)),
            Hole("LINER", new Point(54, 10.6), 1.57, new PinFit(1.5875, "1/16 in", 1.5875, 1.5975, 1.57))
        ) with
        {
            ThinnestWeb = new WebMeasure(0.615, new Point(54, 11.385), new Point(54, 12)),
            LeastStock = new StockMeasure(-0.05, new Point(30, 12)),
        };
        return new InspectionReport
        {
            Unit = DrawingUnit.Inch,
            CutLayers = ["LINER", "SPRING"],
            Parts = [liner],
            OpenContours = [open],
            Findings =
            [
                new InspectionFinding(
                    InspectionCodes.OpenContour,
                    Severity.Fault,
                    "The contour of entities 31 and 32 on layer SPRING does not close: its ends lie 0.15 mm (0.00591 in) apart.",
                    "Join the ends in the drawing.",
                    ["31", "32"],
                    "SPRING",
                    end,
                    0.15,
                    0.01,
                    "mm"
                ),
                new InspectionFinding(
                    InspectionCodes.Duplicate,
                    Severity.Warning,
                    "Forty entities on layer LINER are drawn twice.",
                    "Delete the second copy of each; a machine would cut them twice.",
                    [.. Enumerable.Range(0x40, 40).Select(handle => $"{handle:X}")],
                    "LINER",
                    Value: 40,
                    Limit: 0
                ),
                new InspectionFinding(
                    InspectionCodes.ThinWeb,
                    Severity.Warning,
                    "Only 0.615 mm (0.02421 in) of metal is left beside the hole at (54, 10.6).",
                    "Move the hole, or leave more metal.",
                    ["2C"],
                    "LINER",
                    new Point(54, 11.7),
                    0.615,
                    0.8,
                    "mm"
                ),
                new InspectionFinding(
                    InspectionCodes.HoleFit,
                    Severity.Warning,
                    "The hole at (6, 6) is too wide for a 2.4 mm pin.",
                    "Draw it 2.400 to 2.410 mm wide.",
                    ["2B"],
                    "LINER",
                    new Point(6, 6),
                    2.45,
                    2.41,
                    "mm"
                ),
                new InspectionFinding(
                    InspectionCodes.CurveLeft,
                    Severity.Note,
                    "Entity 31 is a spline, which many controllers cannot follow.",
                    "Draw it as arcs.",
                    ["31"],
                    "SPRING",
                    new Point(66, 20)
                ),
            ],
            Repairs = [],
            Bounds = new Box(0, 0, 66.15, 24),
            CutLengthMm = liner.CutLengthMm + open.LengthMm,
        };
    }

    /// <summary>A drawing without anything that can be cut.</summary>
    public static InspectionReport Nothing() =>
        new()
        {
            Unit = DrawingUnit.Millimetre,
            CutLayers = [],
            Parts = [],
            OpenContours = [],
            Findings =
            [
                new InspectionFinding(
                    InspectionCodes.NothingToCut,
                    Severity.Fault,
                    "The drawing has no line, arc or circle that is seen.",
                    "Show the layers that are to be cut.",
                    []
                ),
            ],
            Repairs = [],
            Bounds = Box.Empty,
            CutLengthMm = 0,
        };

    /// <summary>More findings than a picture holds, near each other, on so many layers in turn.</summary>
    public static InspectionReport Crowded(int findings, int layers = 1) =>
        Sound() with
        {
            Findings =
            [
                .. Enumerable
                    .Range(1, findings)
                    .Select(i => new InspectionFinding(
                        InspectionCodes.MicroSegment,
                        Severity.Warning,
                        FormattableString.Invariant($"Segment number {i} is only 0.01 mm long."),
                        "Draw that stretch again with fewer lines.",
                        [FormattableString.Invariant($"A{i}")],
                        i % layers == 0 ? "LINER" : FormattableString.Invariant($"LINER {i % layers}"),
                        new Point(30 + (i * 0.01), 12),
                        0.01,
                        0.02,
                        "mm"
                    )),
            ],
        };

    private static InspectedPart Part(string layer, Box box, params ImmutableArray<InspectedHole> holes)
    {
        Outline contour = Bar(box);
        return new InspectedPart(layer, contour, ["21", "22", "23", "24"], holes)
        {
            AreaMm2 = contour.AreaMm2 - holes.Sum(hole => hole.Contour.AreaMm2),
            CutLengthMm = contour.PerimeterMm + holes.Sum(hole => hole.Contour.PerimeterMm),
        };
    }

    private static Outline Bar(Box box) =>
        Outline.FromVertices([
            new Vertex(box.MinX, box.MinY, 0),
            new Vertex(box.MaxX, box.MinY, 0),
            new Vertex(box.MaxX, box.MaxY, 0),
            new Vertex(box.MinX, box.MaxY, 0),
        ]);

    private static InspectedHole Hole(string layer, Point at, double diameter, PinFit? fit)
    {
        Outline contour = Outline.FromVertices([
            new Vertex(at.X - (diameter / 2), at.Y, 1),
            new Vertex(at.X + (diameter / 2), at.Y, 1),
        ]);
        return new InspectedHole(layer, contour, new Circle(at, diameter / 2), ["2B"]) { Fit = fit };
    }
}
