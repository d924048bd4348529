using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench;

/// <summary>Reads the dial: the whole bench check of one knife.</summary>
public static class BenchCheck
{
    /// <summary>Turns the blade through its rotation and reports what the bench shows.</summary>
    /// <param name="placement">The knife in its frame, from <see cref="KnifePlacement"/>.</param>
    /// <param name="settings">Targets, tolerances and resolution.</param>
    /// <param name="cancellation">Looked at once a pose of the spring, and while contacts are listed.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static BenchReport Run(Placement placement, BenchSettings settings, CancellationToken cancellation = default)
    {
        Knife knife = placement.Knife;
        StopCheck check = StopCheck.Run(knife, settings, cancellation);
        StopReadings readings = check.Readings;
        SpringPose open = check.Rests[0];
        SpringPose closed = check.Rests[^1];

        ClearanceMeter clearances = new(knife);
        LiftCurve curve = new LiftSweep(check.Solver, check.Track, check.Faces, clearances).Run(
            open.Lowest,
            check.Rests,
            settings.Step,
            cancellation
        );

        BenchReport report = new()
        {
            Placement = placement,
            Settings = settings,
            Stops = readings.Stops,
            Peaks =
            [
                .. check
                    .Stops.PeaksBetween(open.BladeAngle, closed.BladeAngle)
                    .Select(peak => new LiftPeak(
                        peak.BladeAngle,
                        knife.LiftMm(open.Lowest, peak.Lowest),
                        check.Faces.BladeFaceOf(peak.Support.BladeEdge, peak.Support.BladeVertex)
                    )),
            ],
            Curve = curve,
            CornerGap = clearances.CornerGapAt(open),
            Clearances = ClearanceSummary.Of(curve, clearances, closed),
            HasHalfStop = readings.HasHalfStop,
            Findings = [],
        };
        return report with { Findings = FindingRules.Judge(report, check.Solver) };
    }
}
