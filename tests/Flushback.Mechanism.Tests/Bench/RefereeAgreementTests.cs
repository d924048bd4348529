using Flushback.Catalogue.Designs;
using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Tests.Bench;

/// <summary>
/// The solver against a referee that knows nothing of it: NetTopologySuite polygons, an overlap test and bisection.
/// </summary>
public sealed class RefereeAgreementTests
{
    private const double LiftToleranceMm = 2e-6;

    /// <summary>The catalogue and forty-two random knives.</summary>
    public static TheoryData<string> Knives() =>
        [.. KnifeCatalogue.All.Select(knife => knife.Name), .. Enumerable.Range(1, 42).Select(seed => $"seed {seed}")];

    [Theory]
    [MemberData(nameof(Knives))]
    public void Lift_equals_the_brute_force_lift_at_every_half_degree_where_the_pose_exists(string name)
    {
        Knife knife = Find(name).ToKnife();
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

    [Theory]
    [MemberData(nameof(Knives))]
    public void The_open_stop_is_where_the_referee_finds_the_shoulder_meeting_the_end_face(string name)
    {
        Knife knife = Find(name).ToKnife();
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
    [MemberData(nameof(Knives))]
    public void The_open_blade_rests_at_the_shoulder_or_at_a_lift_no_neighbour_undercuts(string name)
    {
        Knife knife = Find(name).ToKnife();
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

    private static KnifeDesign Find(string name) =>
        KnifeCatalogue.All.FirstOrDefault(knife => knife.Name == name)
        ?? KnifeGenerator.FromSeed(int.Parse(name.AsSpan(5), System.Globalization.CultureInfo.InvariantCulture));
}
