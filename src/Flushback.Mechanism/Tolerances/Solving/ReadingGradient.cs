using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances.Drawing;

namespace Flushback.Mechanism.Tolerances.Solving;

/// <summary>Derivatives of all that the bench tells, by the contacts that hold the knife as drawn.</summary>
internal sealed class ReadingGradient(PartSolver solved, Point tip)
{
    private readonly StopGradient? _open = StopGradient.Of(solved.Solver, solved.Open, -1);
    private readonly StopGradient? _half = solved.HalfStop is { } half ? StopGradient.Of(solved.Solver, half, 1) : null;
    private readonly StopGradient? _closed = StopGradient.Of(solved.Solver, solved.Closed, 1);

    /// <summary>Change of an outcome for a motion; null where it has no closed form on this knife.</summary>
    public double? Of(Outcome outcome, PartMotion motion) =>
        outcome switch
        {
            Outcome.OpenHeight => _open is { } open ? Height(open, motion) : null,
            Outcome.HalfStopLift => Lift(solved.HalfStop, _half, motion),
            Outcome.ClosedLift => Lift(solved.Closed, _closed, motion),
            Outcome.OpenAngle => _open?.Change(motion).Blade,
            Outcome.HalfStopAngle => _half?.Change(motion).Blade,
            Outcome.ClosedAngle => _closed?.Change(motion).Blade,
            Outcome.TipDepth => _closed is { } closed ? TipDepth(closed, motion) : null,
            _ => null,
        };

    private Knife Knife => solved.Part.Knife;

    private Vector Arm => Knife.DialPoint - Knife.CentrePin.Centre;

    // The dial stands still and the pin moves away under it; its tip stays on the back.
    private static Vector ArmMotion(PartMotion motion) => new(-motion.PinShift.X, motion.SpringShift.Y);

    private double Height(StopGradient open, PartMotion motion) =>
        motion.PinShift.Y - motion.DropMm + Rise(solved.Open.Pose, open, motion);

    private double? Lift(RestPose? rest, StopGradient? gradient, PartMotion motion) =>
        rest is { } stop && gradient is not null && _open is { } open
            ? Rise(stop.Pose, gradient, motion) - Rise(solved.Open.Pose, open, motion)
            : null;

    /// <summary>Rise of the dial's point over the centre pin.</summary>
    private double Rise(SpringPose pose, StopGradient gradient, PartMotion motion) =>
        ArmMotion(motion).Rotated(pose.Lowest).Y + (Arm.Rotated(pose.Lowest).X * gradient.Change(motion).Spring);

    private double? TipDepth(StopGradient closed, PartMotion motion)
    {
        if (Knife.Handle is not { } handle)
        {
            return null;
        }

        RigidMotion blade = Knife.BladeAt(solved.Closed.Pose.BladeAngle);
        Vector turned = (blade.Apply(tip) - Point.Origin).Right * closed.Change(motion).Blade;
        Vector moved = turned + blade.Apply(motion.BladeShift) - new Vector(0, motion.DropMm);
        Point at = solved.TipAt(tip);
        Nearest nearest = Distance.Between(at, handle);
        Vector outward = (nearest.OnSecond - at).Normalized * Math.Sign(handle.SignedDistanceMm(at));
        return -outward.Dot(moved);
    }
}
