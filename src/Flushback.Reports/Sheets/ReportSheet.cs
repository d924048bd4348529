using Flushback.Mechanism.Bench;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>The whole report in words, before it is laid out: what the terminal and the page have in common.</summary>
internal sealed record ReportSheet
{
    public required string Name { get; init; }

    public required string Verdict { get; init; }

    public required bool IsInOrder { get; init; }

    public required string Zeroing { get; init; }

    public required IReadOnlyList<StopRow> Stops { get; init; }

    public required string? NoHalfStop { get; init; }

    public required IReadOnlyList<Fact> Clearances { get; init; }

    public required IReadOnlyList<FindingRow> Findings { get; init; }

    public required IReadOnlyList<CarriedRow> Carried { get; init; }

    public required IReadOnlyList<Fact> Drawing { get; init; }

    public required IReadOnlyList<string> Repairs { get; init; }

    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>Puts a report into words.</summary>
    public static ReportSheet Of(string name, BenchReport report, IReadOnlyList<string> repairs, Measure measure) =>
        new()
        {
            Name = Printable.Or(name, "Unnamed knife"),
            Verdict = VerdictWords.Of(report),
            IsInOrder = VerdictWords.IsInOrder(report),
            Zeroing =
                "Thou are thousandths of an inch. The spring rocks on its centre pin alone, as on the bench; the dial is zeroed"
                + " with the blade open; plus is proud.",
            Stops = [.. report.Stops.Select(stop => StopRow.Of(report, stop, measure))],
            NoHalfStop = report.HasHalfStop
                ? null
                : "This tang has no half stop: the blade rests open and closed only.",
            Clearances = ClearanceFacts.Of(report, measure),
            Findings = [.. report.Findings.Select(finding => FindingRow.Of(report, finding, measure))],
            Carried = CarriedRow.Of(report, measure),
            Drawing = DrawingFacts.Of(report, measure),
            Repairs = [.. repairs.Select(Printable.Of)],
            Cautions = Sheets.Cautions.All,
        };
}
