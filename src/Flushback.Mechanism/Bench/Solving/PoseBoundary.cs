using Flushback.Geometry;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>Closes in on the blade angle at which something about the pose of the spring changes.</summary>
/// <remarks>
/// The slopes, known exactly from the touching pairs, tell ahead where that is: where one pair takes over from another the
/// tangents of both meet, and under one pair the slope runs level. Where no pose is left, the play between support and
/// ceiling has run out. Ten poses then do the work of forty halvings.
/// </remarks>
internal static class PoseBoundary
{
    /// <summary>A slope below this is rounding: an arc about the pivot carries the spring level.</summary>
    public const double Level = 1e-10;

    // So small a turn moves nothing on a knife by a digit of its place; near zero a double would have many more to give.
    private static readonly Angle _finest = new(1e-15);

    /// <summary>The last pose, going from one towards another, at which a condition holds, and the first at which it does not.</summary>
    public static (SpringPose Holds, SpringPose Fails) Between(
        BenchSolver solver,
        SpringPose holds,
        SpringPose fails,
        Func<SpringPose, bool> condition
    ) =>
        Halving.Between(
            holds,
            fails,
            static pose => pose.BladeAngle,
            (angle, near) => solver.PoseAt(angle, near.Lowest),
            condition,
            _finest,
            Guess
        );

    private static Angle Guess(SpringPose holds, SpringPose fails)
    {
        Angle width = fails.BladeAngle - holds.BladeAngle;
        double share =
            !fails.IsPossible ? Play(holds) / (Play(holds) - Play(fails))
            : holds.Support.IsSamePairAs(fails.Support) ? RunsLevel(holds.Slope, fails.Slope)
            : TangentsMeet(holds, fails, width.Radians);
        return holds.BladeAngle + (width * share);
    }

    private static double Play(SpringPose pose) => (pose.Highest - pose.Lowest).Radians;

    private static double RunsLevel(double from, double to) => (from - Math.CopySign(Level, from)) / (from - to);

    private static double TangentsMeet(SpringPose from, SpringPose to, double width) =>
        (((to.Lowest - from.Lowest).Radians / width) - to.Slope) / (from.Slope - to.Slope);
}
