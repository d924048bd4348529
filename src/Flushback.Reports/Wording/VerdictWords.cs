using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;

namespace Flushback.Reports.Wording;

/// <summary>Verdicts in a maker's words.</summary>
public static class VerdictWords
{
    /// <summary>A reading against its window: <c>high by 3.2 thou</c>, measured from the edge of the window.</summary>
    public static string Of(StopReading reading, Measure measure) =>
        reading.Verdict switch
        {
            ReadingVerdict.Good => "in the window",
            ReadingVerdict.High => $"high by {Beyond(reading.LiftMm - Ceiling(reading), measure)}",
            ReadingVerdict.Low => $"low by {Beyond(Floor(reading) - reading.LiftMm, measure)}",
            _ => "does not rest",
        };

    /// <summary>The verdict on the whole knife in one line.</summary>
    public static string Of(BenchReport report) => Of([report]);

    /// <summary>The verdict on a knife of several blades in one line.</summary>
    public static string Of(IReadOnlyList<BenchReport> blades)
    {
        int faults = CountOf(blades, Severity.Fault);
        int warnings = CountOf(blades, Severity.Warning);
        return (faults, warnings) switch
        {
            (0, 0) when !blades.All(ReadsGood) => "Needs work: not every reading lies in its window.",
            (0, 0) => "In order: every reading lies in its window and nothing needs work.",
            (0, _) => $"Needs work: {Counted(warnings, "warning")}.",
            (_, 0) => $"Will not work as drawn: {Counted(faults, "fault")}.",
            _ => $"Will not work as drawn: {Counted(faults, "fault")} and {Counted(warnings, "warning")}.",
        };
    }

    /// <summary>True when nothing needs work: every reading in its window, no finding above a note.</summary>
    internal static bool IsInOrder(BenchReport report) => report.IsClean && ReadsGood(report);

    /// <summary>How much a finding matters, in lower case.</summary>
    public static string Of(Severity severity) =>
        severity switch
        {
            Severity.Fault => "fault",
            Severity.Warning => "warning",
            _ => "note",
        };

    /// <summary>Lowest reading inside the window, in millimetres.</summary>
    internal static double Floor(StopReading reading) => reading.Target.LiftMm - reading.Target.ToleranceMm;

    /// <summary>Highest reading inside the window, in millimetres.</summary>
    internal static double Ceiling(StopReading reading) => reading.Target.LiftMm + reading.Target.ToleranceMm;

    // A hair outside is outside: it must not read as "high by 0.0".
    private static string Beyond(double mm, Measure measure) =>
        mm < 0.05 * Measure.MmPerThou ? "less than 0.1 thou" : $"{measure.Thou(mm)} thou";

    private static bool ReadsGood(BenchReport report) =>
        report.Stops.All(reading => reading.Verdict == ReadingVerdict.Good);

    private static int CountOf(IReadOnlyList<BenchReport> blades, Severity severity) =>
        blades.Sum(report => report.Findings.Count(finding => finding.Severity == severity));

    private static string Counted(int count, string noun) =>
        FormattableString.Invariant($"{count} {noun}") + (count == 1 ? "" : "s");
}
