using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Tests.Bench;

/// <summary>
/// The solver against a referee that knows nothing of it: NetTopologySuite polygons, an overlap test and bisection.
/// </summary>
public sealed class RefereeLiftTests
{
    private const double LiftToleranceMm = 2e-6;

    [Theory]
    [MemberData(nameof(RefereeKnives.Names), MemberType = typeof(RefereeKnives))]
    public void Lift_equals_the_brute_force_lift_at_every_half_degree_where_the_pose_exists(string name)
    {
        Knife knife = RefereeKnives.Find(name).ToKnife();
        RotationTrack track = RotationTrack.Follow(new BenchSolver(knife));
        IReadOnlyList<BenchPose> referee = BruteForceBench.For(knife).Sweep(Angle.Zero, Angle.FromDegrees(180), 361);

        int compared = 0;
        foreach (BenchPose expected in referee.Where(pose => pose.IsFree))
        {
            SpringPose actual = track.At(expected.BladeAngle);
            double difference = knife.LiftMm(expected.SpringRotation, actual.Lowest);
            Assert.True(
                Math.Abs(difference) < LiftToleranceMm,
                FormattableString.Invariant(
                    $"{name} at {expected.BladeAngle.Degrees:0.0} deg: {difference:e2} mm apart, possible {actual.IsPossible}, {actual.Support}"
                )
            );
            compared++;
        }

        Assert.InRange(compared, 330, 361);
    }
}
