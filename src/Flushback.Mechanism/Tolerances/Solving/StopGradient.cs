using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances.Drawing;

namespace Flushback.Mechanism.Tolerances.Solving;

/// <summary>How spring and blade turn when what holds a stop moves a little: exact to first order.</summary>
/// <remarks>
/// Two contacts hold a stop. A small motion opens the gap of each along its normal n by n . (motion of the spring's place
/// less that of the blade's); the turns d(phi) and d(theta) shut both again: spring lever d(phi) + blade lever d(theta) + gap
/// opened = 0 (implicit function theorem on rigid bodies). How the faces curve counts in second order only.
/// </remarks>
internal sealed class StopGradient
{
    // To either side of the rest: far over rounding, and moves a contact by a nanometre's hundredth.
    private static readonly Angle _aside = new(1e-9);

    // A shoulder this near over the support butts; a spring that turns further than this has jumped over it.
    private const double ButtsRad = 1e-6;

    // Contacts nearer than this hold a blade as one does: where it rests is then a matter of how they curve.
    private const double OnePlaceMm = 0.5;

    private readonly Knife _knife;
    private readonly SpringPose _pose;
    private readonly SpringPose.Feature _first;
    private readonly SpringPose.Feature _second;

    private StopGradient(Knife knife, SpringPose pose, SpringPose.Feature first, SpringPose.Feature second) =>
        (_knife, _pose, _first, _second) = (knife, pose, first, second);

    /// <summary>The gradient of a stop; null where the blade does not rest, or rests on one contact.</summary>
    /// <param name="solver">The knife.</param>
    /// <param name="rest">The stop.</param>
    /// <param name="outward">Sign of the blade angle on the way into the stop: -1 for open, 1 for the others.</param>
    public static StopGradient? Of(BenchSolver solver, RestPose rest, int outward)
    {
        if (!rest.Rests)
        {
            return null;
        }

        SpringPose pose = rest.Pose;
        SpringPose before = solver.PoseAt(pose.BladeAngle - (_aside * outward), pose.Lowest);
        SpringPose beyond = solver.PoseAt(pose.BladeAngle + (_aside * outward), pose.Lowest);
        bool goesOn = beyond.IsPossible && Math.Abs((beyond.Lowest - pose.Lowest).Radians) < ButtsRad;
        SpringPose.Feature? second = goesOn ? beyond.Support : Ceiling(solver, before);
        return before.IsPossible && second is { } other && other.At.DistanceTo(before.Support.At) > OnePlaceMm
            ? new StopGradient(solver.Knife, pose, before.Support, other)
            : null;
    }

    /// <summary>Turn of the spring and change of the blade angle, in radians, for a motion.</summary>
    public (double Spring, double Blade) Change(PartMotion motion)
    {
        double first = Opened(_first, motion);
        double second = Opened(_second, motion);
        double determinant = (_first.SpringLever * _second.BladeLever) - (_first.BladeLever * _second.SpringLever);
        return (
            ((second * _first.BladeLever) - (first * _second.BladeLever)) / determinant,
            ((first * _second.SpringLever) - (second * _first.SpringLever)) / determinant
        );
    }

    private static SpringPose.Feature? Ceiling(BenchSolver solver, SpringPose pose)
    {
        NoseBounds bounds = solver.NoseBoundsAt(pose.BladeAngle, pose.Lowest, riseMm: 0);
        return bounds.IsCeiled && bounds.Highest - bounds.Lowest < ButtsRad ? bounds.Ceiling : null;
    }

    private double Opened(in SpringPose.Feature contact, PartMotion motion)
    {
        RigidMotion blade = Knife.BladeAt(_pose.BladeAngle);
        RigidMotion spring = _knife.SpringAt(_pose.Lowest);
        Vector ofBlade = motion.OfBlade(
            _knife.Blade,
            contact.BladeEdge,
            contact.BladeVertex,
            blade.Inverse.Apply(contact.At)
        );
        Vector ofSpring = motion.OfSpring(
            _knife.Spring,
            contact.SpringEdge,
            contact.SpringVertex,
            spring.Inverse.Apply(contact.At)
        );
        return contact.Normal.Dot(motion.PinShift + spring.Apply(ofSpring) - blade.Apply(ofBlade));
    }
}
