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
            ReadingVerdict.High => $"high by {measure.Thou(reading.LiftMm - Ceiling(reading))} thou",
            ReadingVerdict.Low => $"low by {measure.Thou(Floor(reading) - reading.LiftMm)} thou",
            _ => "does not rest",
        };

    /// <summary>The verdict on the whole knife in one line.</summary>
    public static string Of(BenchReport report)
    {
        int faults = report.Findings.Count(finding => finding.Severity == Severity.Fault);
        int warnings = report.Findings.Count(finding => finding.Severity == Severity.Warning);
        return (faults, warnings) switch
        {
            (0, 0) => "In order: every reading lies in its window and nothing needs work.",
            (0, _) => $"Needs work: {Counted(warnings, "warning")}.",
            (_, 0) => $"Will not work as drawn: {Counted(faults, "fault")}.",
            _ => $"Will not work as drawn: {Counted(faults, "fault")} and {Counted(warnings, "warning")}.",
        };
    }

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

    private static string Counted(int count, string noun) =>
        FormattableString.Invariant($"{count} {noun}") + (count == 1 ? "" : "s");
}
