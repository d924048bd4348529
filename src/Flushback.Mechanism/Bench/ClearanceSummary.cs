using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Mechanism.Bench.Solving;

namespace Flushback.Mechanism.Bench;

/// <summary>The least of each clearance over the rotation, and what counts when closed.</summary>
internal static class ClearanceSummary
{
    /// <summary>Summary of a curve that has been measured.</summary>
    public static Clearances Of(LiftCurve curve, ClearanceMeter meter, SpringPose closed)
    {
        LiftSample edge = curve.Samples.MinBy(sample => sample.EdgeClearanceMm);
        LiftSample tip = curve.Samples.MinBy(sample => sample.TipClearanceMm);
        LiftSample tail = curve.Samples.MinBy(sample => sample.TailClearanceMm);
        return new Clearances(
            Least(closed.BladeAngle, meter.At(closed.BladeAngle, closed.Lowest).Edge),
            Least(edge.BladeAngle, meter.At(edge.BladeAngle, edge.SpringRotation).Edge),
            Least(tip.BladeAngle, meter.At(tip.BladeAngle, tip.SpringRotation).Tip),
            Least(tail.BladeAngle, meter.At(tail.BladeAngle, tail.SpringRotation).Tail),
            meter.TipAt(closed.BladeAngle),
            meter.TipDepthMm(closed.BladeAngle)
        );
    }

    private static LeastClearance Least(Angle bladeAngle, Nearest nearest) =>
        new(nearest.DistanceMm, bladeAngle, nearest.OnFirst);
}
