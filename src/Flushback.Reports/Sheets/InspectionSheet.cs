using Flushback.Geometry;
using Flushback.Inspection;
using Flushback.Inspection.Repair;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>An inspection in words, before it is laid out: what the terminal and the page have in common.</summary>
internal sealed record InspectionSheet
{
    public required string Name { get; init; }

    public required string Verdict { get; init; }

    public required bool IsInOrder { get; init; }

    public required IReadOnlyList<Fact> Summary { get; init; }

    public required IReadOnlyList<PartRow> Parts { get; init; }

    public required IReadOnlyList<NarrowRow> Narrow { get; init; }

    public required IReadOnlyList<HoleRow> Holes { get; init; }

    public required IReadOnlyList<string> CutOuts { get; init; }

    public required IReadOnlyList<InspectionFindingRow> Findings { get; init; }

    /// <summary>What is only counted, a sentence for each kind and layer.</summary>
    public required IReadOnlyList<string> MoreFindings { get; init; }

    public required IReadOnlyList<string> Repairs { get; init; }

    public required IReadOnlyList<string> Changes { get; init; }

    public required IReadOnlyList<string> LeftAsIs { get; init; }

    public required string Caution { get; init; }

    /// <summary>Puts an inspection into words.</summary>
    /// <param name="name">What the maker calls the drawing.</param>
    /// <param name="report">The inspection.</param>
    /// <param name="copy">The repaired copy; null when none was made.</param>
    /// <param name="measure">How numbers are written.</param>
    public static InspectionSheet Of(string name, InspectionReport report, RepairedDrawing? copy, Measure measure) =>
        new()
        {
            Name = Printable.Or(name, "Unnamed drawing"),
            Verdict = InspectionWords.VerdictOn(report),
            IsInOrder = report.IsClean,
            Summary = SummaryOf(report, measure),
            Parts = [.. report.Parts.Select((part, i) => PartRow.Of(part, i + 1, measure))],
            Narrow = [.. report.Parts.SelectMany((part, i) => NarrowRow.Of(part, i + 1, measure))],
            Holes = HolesOf(report, measure),
            CutOuts = [.. report.Parts.SelectMany((part, i) => CutOutsOf(part, i + 1, measure))],
            Findings =
            [
                .. ListedFindings
                    .Of(report.Findings)
                    .Select(i => InspectionFindingRow.Of(report.Findings[i], i + 1, measure)),
            ],
            MoreFindings = ListedFindings.RestOf(report.Findings),
            Repairs = [.. report.Repairs.Select(Printable.Of)],
            Changes = [.. (copy?.Repairs ?? []).Select(Printable.Of)],
            LeftAsIs = [.. (copy?.Left ?? []).Select(Printable.Of)],
            Caution =
                "These numbers are read from a drawing and release no part: kerf, tolerance and least hole are the shop's own.",
        };

    private static IReadOnlyList<Fact> SummaryOf(InspectionReport report, Measure measure)
    {
        int holes = report.Parts.Sum(part => part.Holes.Length);
        string open =
            report.OpenContours.Length == 0
                ? ""
                : $", {InspectionWords.Counted(report.OpenContours.Length, "open contour")}";
        return
        [
            new Fact(
                "To cut",
                $"{InspectionWords.Counted(report.Parts.Length, "part")}, {InspectionWords.Counted(holes, "hole")}{open}"
            ),
            new Fact("Layers", string.Join(", ", report.CutLayers.Select(Printable.Of).DefaultIfEmpty("none"))),
            new Fact("Drawn in", InspectionWords.Of(report.Unit)),
            new Fact("Box", report.Bounds == Box.Empty ? "nothing" : BoxOf(report.Bounds, measure)),
            new Fact("Cut length", LongLength(report.CutLengthMm, measure)),
            new Fact("Area", measure.Area(report.Parts.Sum(part => part.AreaMm2))),
            .. report.CutPaths.Length == 0
                ? []
                : new[]
                {
                    new Fact(
                        "Cut path",
                        $"{LongLength(report.CutPaths.Sum(path => path.Path.PerimeterMm), measure)} along the middle of the kerf"
                    ),
                },
        ];
    }

    private static List<HoleRow> HolesOf(InspectionReport report, Measure measure)
    {
        List<HoleRow> rows = [];
        for (int part = 0; part < report.Parts.Length; part++)
        {
            foreach (InspectedHole hole in report.Parts[part].Holes)
            {
                if (hole.Circle is { } circle)
                {
                    rows.Add(HoleRow.Of(circle, hole.Fit, rows.Count + 1, part + 1, measure));
                }
            }
        }

        return rows;
    }

    private static IEnumerable<string> CutOutsOf(InspectedPart part, int number, Measure measure) =>
        part
            .Holes.Where(hole => hole.Circle is null)
            .Select(hole =>
                $"Part {measure.Number(number, 0)} has a cut-out that is no circle at {measure.Place(hole.Contour.Bounds.Centre)}: {BoxOf(hole.Contour.Bounds, measure)}."
            );

    private static string BoxOf(Box box, Measure measure) =>
        $"{measure.MmByMm(box)} mm ({measure.InchesByInches(box)} in)";

    private static string LongLength(double mm, Measure measure) =>
        $"{measure.Mm(mm, 1)} mm ({measure.Inches(mm, 2)} in)";
}
