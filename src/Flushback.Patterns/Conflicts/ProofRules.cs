using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Conflicts;

/// <summary>The drawn knife read on the bench: it has to read what is wanted, and nothing may be in the way.</summary>
internal static class ProofRules
{
    private const double ReadsMm = 1e-6;
    private static readonly Angle _step = Angle.FromDegrees(1);

    /// <summary>The conflicts that the bench shows.</summary>
    public static IEnumerable<PatternConflict> Of(
        PatternLayout layout,
        DrawnPattern pattern,
        CancellationToken cancellation
    )
    {
        Placement placement = new(pattern.Knife, RigidMotion.Identity, Angle.Zero, DrawnBladeAngleFound: false);
        BenchSettings settings = new() { Step = _step, Targets = pattern.Targets };
        BenchReport report = BenchCheck.Run(placement, settings, cancellation);
        return
        [
            .. Edge(layout, report, settings),
            .. report.Stops.SelectMany(stop => Reading(layout, stop)),
            .. Faults(report),
        ];
    }

    private static IEnumerable<PatternConflict> Reading(PatternLayout layout, StopReading stop)
    {
        ReadingParameters wanted = layout.Dimensions.Readings;
        (string at, double lift, double rest) = stop.Stop switch
        {
            Stop.Open => ("open", 0, 0),
            Stop.HalfStop => ("at the half stop", wanted.HalfStopMm, wanted.HalfStopRestDeg),
            _ => ("closed", wanted.ClosedMm, wanted.ClosedRestDeg),
        };
        string[] paths = stop.Stop switch
        {
            Stop.Open => ["tang.open_flat_tilt_deg", "tang.shoulder_deg", "tang.height_mm"],
            Stop.HalfStop => ["readings.half_stop_mm", "readings.half_stop_rest_deg", "tang.height_mm"],
            _ => ["readings.closed_mm", "readings.closed_rest_deg", "tang.kick_place_mm", "tang.height_mm"],
        };
        bool right =
            stop.Rests
            && Math.Abs(stop.LiftMm - lift) <= ReadsMm
            && Math.Abs(stop.RestAngle.Degrees - rest) <= RestsDeg;
        if (!right)
        {
            string names = string.Join(", ", paths.Select(path => PatternLimits.Of(path).Name));
            yield return Conflict.Of(
                stop.Rests
                    ? $"The blade rests {at} at {Said.Degrees(stop.RestAngle.Degrees)} and reads {Said.Length(stop.LiftMm)} because something else than the face meant for it carries the spring; change {names}."
                    : $"The blade does not rest {at}; change {names}.",
                paths
            );
        }
    }

    // The square of this, in radians, over the faces' length is far below what the reading is held to.
    private const double RestsDeg = 1e-4;

    private static IEnumerable<PatternConflict> Edge(PatternLayout layout, BenchReport report, BenchSettings settings)
    {
        SpringParameters spring = layout.Dimensions.Spring;
        double edge = Math.Min(report.Clearances.EdgeClosed.DistanceMm, report.Clearances.TailLeast.DistanceMm);
        if (!(edge >= settings.LeastEdgeClearanceMm))
        {
            yield return Conflict.Of(
                $"Closed, the blade comes within {Said.Length(edge)} of the spring, less than the {Said.Length(settings.LeastEdgeClearanceMm)} its edge needs; raise the kick height of {Said.Length(layout.Dimensions.Tang.KickHeightMm!.Value)}, or make the spring less deep than {Said.Length(spring.CentreDepthMm!.Value)} at the centre pin or {Said.Length(spring.RearDepthMm!.Value)} at the rear pin.",
                "tang.kick_height_mm",
                "spring.centre_depth_mm",
                "spring.rear_depth_mm"
            );
        }
    }

    private static IEnumerable<PatternConflict> Faults(BenchReport report) =>
        report
            .Findings.Where(finding => finding.Severity == Severity.Fault)
            .Select(finding =>
                Conflict.Of($"{finding.Message} {finding.Advice}", "tang.height_mm", "tang.kick_height_mm")
            );
}
