using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Tests.Bench;

/// <summary>The open stop and the open rest against the referee, which knows nothing of the solver.</summary>
public sealed class RefereeStopTests
{
    private const double LiftToleranceMm = 2e-6;

    [Theory]
    [MemberData(nameof(RefereeKnives.Names), MemberType = typeof(RefereeKnives))]
    public void The_open_stop_is_where_the_referee_finds_the_shoulder_meeting_the_end_face(string name)
    {
        Knife knife = RefereeKnives.Find(name).ToKnife();
        BenchSolver solver = new(knife);
        StopFinder stops = new(solver, RotationTrack.Follow(solver));
        BenchPose? referee = BruteForceBench.For(knife).OpenStop();

        SpringPose? shoulder = stops.Shoulder(new FaceNaming(knife));

        Assert.NotNull(referee);
        Assert.NotNull(shoulder);
        Assert.Equal(referee.Value.BladeAngle.Degrees, shoulder.Value.BladeAngle.Degrees, 1e-5);
        Assert.Equal(0, knife.LiftMm(referee.Value.SpringRotation, shoulder.Value.Lowest), LiftToleranceMm);
    }

    [Theory]
    [MemberData(nameof(RefereeKnives.Names), MemberType = typeof(RefereeKnives))]
    public void The_open_blade_rests_at_the_shoulder_or_at_a_lift_no_neighbour_undercuts(string name)
    {
        Knife knife = RefereeKnives.Find(name).ToKnife();
        BenchSolver solver = new(knife);
        StopFinder stops = new(solver, RotationTrack.Follow(solver));
        BruteForceBench bench = BruteForceBench.For(knife);

        RestPose open = stops.Open();
        Angle shoulder = stops.Shoulder(new FaceNaming(knife))!.Value.BladeAngle;

        Assert.True(open.Rests);
        if ((open.Pose.BladeAngle - shoulder).Degrees > 1e-6)
        {
            BenchPose rest = bench.RestBetween(shoulder, open.Pose.BladeAngle + (open.Pose.BladeAngle - shoulder));
            Assert.Equal(0, knife.LiftMm(rest.SpringRotation, open.Pose.Lowest), LiftToleranceMm);
        }
    }
}
