using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>Peak lift, corner gap and clearances in words.</summary>
internal static class ClearanceFacts
{
    public static IReadOnlyList<Fact> Of(BenchReport report, Measure measure) =>
        [.. Peaks(report, measure), CornerGap(report, measure), .. Edge(report, measure), TipDepth(report, measure)];

    private static IEnumerable<Fact> Peaks(BenchReport report, Measure measure)
    {
        if (report.Peaks.IsEmpty)
        {
            yield return new Fact("Peak lift", "no peak between the stops");
            yield break;
        }

        double highest = report.Peaks.Max(peak => peak.LiftMm);
        bool named = false;
        foreach (LiftPeak peak in report.Peaks)
        {
            bool isHighest = !named && peak.LiftMm == highest;
            named |= isHighest;
            yield return new Fact(
                isHighest && report.Peaks.Length > 1 ? "Peak lift, the highest" : "Peak lift",
                $"{measure.Reading(peak.LiftMm)} at {measure.Degrees(peak.BladeAngle, 1)}, on the {FaceNames.Of(peak.BladeFace)}"
            );
        }
    }

    private static Fact CornerGap(BenchReport report, Measure measure)
    {
        double limit = report.Settings.LeastCornerGapMm;
        return report.CornerGap is { } gap
            ? new Fact("Corner gap of the notch", measure.Length(gap.GapMm), AtLeast(limit, measure), gap.GapMm < limit)
            : new Fact("Corner gap of the notch", "not known: no notch was found");
    }

    private static IEnumerable<Fact> Edge(BenchReport report, Measure measure)
    {
        double limit = report.Settings.LeastEdgeClearanceMm;
        Clearances clearances = report.Clearances;
        yield return new Fact(
            "Edge to spring, closed",
            measure.Length(clearances.EdgeClosed.DistanceMm),
            AtLeast(limit, measure),
            clearances.EdgeClosed.DistanceMm < limit
        );
        yield return Least("Edge to spring, least", clearances.EdgeLeast, measure);
        yield return Least("Tip to spring, least", clearances.TipLeast, measure);
        yield return Least("Blade to tail of spring, least", clearances.TailLeast, measure);
    }

    private static Fact Least(string label, LeastClearance clearance, Measure measure) =>
        new(
            label,
            $"{measure.Length(clearance.DistanceMm)} at {measure.Degrees(clearance.BladeAngle, 1)}"
                + (clearance.DistanceMm < 0 ? ": they overlap" : ""),
            FallsShort: clearance.DistanceMm < 0
        );

    private static Fact TipDepth(BenchReport report, Measure measure)
    {
        const string label = "Tip inside the handle, closed";
        double limit = report.Settings.LeastTipDepthMm;
        return report.Clearances.TipDepthMm switch
        {
            null => new Fact(label, "not known: no handle outline was given"),
            < 0 and double depth => new Fact(
                label,
                $"proud by {measure.Length(-depth)}",
                AtLeast(limit, measure),
                FallsShort: true
            ),
            double depth => new Fact(label, $"{measure.Length(depth)} deep", AtLeast(limit, measure), depth < limit),
        };
    }

    private static string AtLeast(double limitMm, Measure measure) => $"at least {measure.Mm(limitMm, 2)} mm wanted";
}
