using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Tests.Bench;

/// <summary>Mistakes this mathematics invites, one test each.</summary>
public sealed class PitfallTests
{
    private static readonly KnifeDesign Straight = KnifeCatalogue.Wagtail with
    {
        Tang = new TangDesign { HalfStopRelief = Relief.None, ClosedRelief = Relief.None },
    };

    [Fact]
    public void The_spring_does_not_sit_on_top_of_the_shoulder_in_the_first_degrees()
    {
        BenchCase bench = new(KnifeCatalogue.Wagtail);
        for (double degrees = 0.1; degrees < 6; degrees += 0.1)
        {
            SpringPose pose = bench.Track.At(Angle.FromDegrees(degrees));
            Assert.True(pose.IsPossible);
            Assert.InRange(bench.RawLiftMm(pose), 0, 0.6);
            Assert.Equal(BladeFace.OpenCorner, bench.CarryingFace(pose));
        }
    }

    [Fact]
    public void Under_an_overhanging_shoulder_the_nose_may_lie_trapped_or_on_top_and_is_followed_from_mid_swing()
    {
        BenchCase bench = new(KnifeCatalogue.Wagtail);
        Angle justOpen = Angle.FromDegrees(0.05);

        SpringPose trapped = bench.Track.At(justOpen);
        SpringPose onTop = bench.Solver.PoseAt(justOpen);

        Assert.InRange(bench.RawLiftMm(trapped), 0, 0.05);
        Assert.True(double.IsFinite(trapped.Highest.Radians));
        Assert.InRange(bench.RawLiftMm(onTop), 1.5, 4);
        Assert.True(trapped.Highest < onTop.Lowest);
    }

    [Fact]
    public void A_square_shoulder_lifts_the_nose_by_two_millimetres_within_a_hundredth_of_a_degree_and_bounds_nothing_past_it()
    {
        // The nose's corner has to climb past the height of the centre pin, twice the height of the pin over the
        // underside: 2.8 mm here.
        SpringDesign highPin = KnifeCatalogue.Plover.Spring with
        {
            CentrePin = new Point(-28, 5.4),
        };
        BenchCase bench = new(KnifeCatalogue.Plover with { Spring = highPin });

        RestPose open = bench.Stops.Open();
        SpringPose past = bench.Solver.PoseAt(open.Pose.BladeAngle - Angle.FromDegrees(0.01));

        Assert.True(open.Rests);
        Assert.InRange(bench.RawLiftMm(open.Pose), -0.01, 0.01);
        Assert.True(past.IsPossible);
        Assert.Equal(double.PositiveInfinity, past.Highest.Radians);
        Assert.InRange(bench.RawLiftMm(past) - bench.RawLiftMm(open.Pose), 1.5, 4);
    }

    [Fact]
    public void Past_the_open_stop_there_is_a_lowest_rotation_but_no_pose()
    {
        BenchCase bench = new(KnifeCatalogue.Wagtail);
        RestPose open = bench.Stops.Open();

        SpringPose past = bench.Solver.PoseAt(open.Pose.BladeAngle - Angle.FromDegrees(0.1), near: open.Pose.Lowest);

        Assert.True(double.IsFinite(past.Lowest.Radians));
        Assert.True(past.Lowest > past.Highest);
        Assert.False(past.IsPossible);
    }

    [Fact]
    public void Folded_too_far_the_blade_meets_the_spring_behind_the_centre_pin_and_no_pose_is_left()
    {
        // No kick to speak of: beyond closed, the edge runs into the rigid spring's tail.
        BenchCase bench = new(KnifeCatalogue.Wagtail);

        SpringPose tooFar = bench.Solver.PoseAt(Angle.FromDegrees(188), bench.Closed.Lowest);

        Assert.True(double.IsFinite(tooFar.Lowest.Radians));
        Assert.False(tooFar.IsPossible);
    }

    [Fact]
    public void Grinding_one_end_of_a_face_shows_at_rest_and_not_at_the_nominal_angle()
    {
        Knife before = Straight.ToKnife();
        int openCorner = BenchCase.CornerBetween(before, BladeFace.OpenFlat, BladeFace.HalfStopFace);
        Knife after = BenchCase.MoveVertex(before, openCorner, new Vector(0.1, 0));
        BenchCase was = new(before);
        BenchCase now = new(after);
        Angle nominal = Angle.FromDegrees(90);

        Assert.Equal(was.Track.At(nominal).Lowest.Radians, now.Track.At(nominal).Lowest.Radians, 1e-12);
        Assert.InRange(was.RawLiftMm(was.HalfStop) - now.RawLiftMm(now.HalfStop), 0.04, 0.07);
    }

    [Fact]
    public void All_contacts_that_tie_at_a_stop_are_told_and_not_the_largest_alone()
    {
        BenchReport report = BenchCase.Check(KnifeCatalogue.Wagtail.ToDrawn());

        Assert.Equal(
            [(BladeFace.OpenCorner, SpringFace.Underside), (BladeFace.Shoulder, SpringFace.EndFace)],
            report.At(Stop.Open)!.Contacts.Select(contact => (contact.BladeFace, contact.SpringFace))
        );
        Assert.Equal(
            [(BladeFace.ClosedCorner, SpringFace.Underside), (BladeFace.OpenCorner, SpringFace.Underside)],
            report.At(Stop.HalfStop)!.Contacts.Select(contact => (contact.BladeFace, contact.SpringFace))
        );
        Assert.Equal(
            [(BladeFace.Kick, SpringFace.Underside), (BladeFace.ClosedCorner, SpringFace.Underside)],
            report.At(Stop.Closed)!.Contacts.Select(contact => (contact.BladeFace, contact.SpringFace))
        );
        Assert.All(report.Stops.SelectMany(stop => stop.Contacts), contact => Assert.Equal(0, contact.GapMm, 1e-9));
    }

    [Fact]
    public void Rounding_a_corner_of_a_straight_face_in_line_contact_costs_no_reading()
    {
        KnifeDesign rounded = Straight with { Tang = Straight.Tang with { ClosedCornerRadiusMm = 0.5 } };
        BenchCase sharp = new(Straight);
        BenchCase round = new(rounded);

        Assert.Equal(sharp.RawLiftMm(sharp.HalfStop), round.RawLiftMm(round.HalfStop), 1e-9);
        Assert.Equal(sharp.RawLiftMm(sharp.Closed), round.RawLiftMm(round.Closed), 1e-9);
    }

    [Fact]
    public void Rounding_the_open_corner_of_a_tilted_flat_drops_the_zero_so_that_the_rest_reads_high()
    {
        KnifeDesign rounded = Straight with { Tang = Straight.Tang with { OpenCornerRadiusMm = 0.5 } };
        BenchReport sharp = BenchCase.Check(Straight.ToDrawn());
        BenchReport round = BenchCase.Check(rounded.ToDrawn());

        double zeroDrops = (sharp.At(Stop.Open)!.SpringRotation - round.At(Stop.Open)!.SpringRotation).Radians;
        double halfStopRises = round.At(Stop.HalfStop)!.LiftMm - sharp.At(Stop.HalfStop)!.LiftMm;

        Assert.True(zeroDrops > 0);
        Assert.True(halfStopRises > 0);
    }

    [Fact]
    public void Rounding_the_shoulder_lets_the_blade_over_open_and_moves_the_zero_more_than_rounding_the_open_corner()
    {
        KnifeDesign cornerRounded = Straight with { Tang = Straight.Tang with { OpenCornerRadiusMm = 0.3 } };
        KnifeDesign shoulderRounded = Straight with { Blade = new BladeDesign { ShoulderRadiusMm = 0.3 } };
        RestPose sharp = new BenchCase(Straight).Stops.Open();
        RestPose corner = new BenchCase(cornerRounded).Stops.Open();
        RestPose shoulder = new BenchCase(shoulderRounded).Stops.Open();

        double byCorner = (sharp.Pose.Lowest - corner.Pose.Lowest).Radians;
        double byShoulder = (sharp.Pose.Lowest - shoulder.Pose.Lowest).Radians;

        Assert.True(shoulder.Pose.BladeAngle < sharp.Pose.BladeAngle);
        Assert.True(byShoulder > 3 * byCorner, $"shoulder {byShoulder:e2}, corner {byCorner:e2}");
    }

    [Theory]
    [InlineData(0.01, 0.01)]
    [InlineData(0.02, 0)]
    [InlineData(0, 0.02)]
    [InlineData(0.005, 0.02)]
    public void A_slice_counts_by_its_depth_at_the_foot_of_the_perpendicular_from_the_pivot(
        double atOpen,
        double atClosed
    )
    {
        // Rigid bodies: with d1 and d2 off the two contacts the reading drops by d = w d1 + (1 - w) d2, the depth at the
        // foot of the perpendicular from the pivot; the spring turns by d over its distance from the centre pin, and the
        // blade by (d2 - d1) over the distance between the contacts plus the spring's own turn.
        Knife knife = Straight.ToKnife();
        BenchCase was = new(knife);
        int openCorner = BenchCase.CornerBetween(knife, BladeFace.OpenFlat, BladeFace.HalfStopFace);
        int closedCorner = BenchCase.CornerBetween(knife, BladeFace.HalfStopFace, BladeFace.ClosedFace);
        RigidMotion atRest = Knife.BladeAt(was.HalfStop.BladeAngle);
        Point rear = atRest.Apply(knife.Blade.Edges[closedCorner].Start);
        Point front = atRest.Apply(knife.Blade.Edges[openCorner].Start);
        Vector along = (front - rear).Normalized;
        double foot = (Point.Origin - rear).Dot(along);
        double between = rear.DistanceTo(front);

        // The half-stop face points to the rear when open: +x takes metal off. The open corner is its front contact.
        Knife sliced = BenchCase.MoveVertex(knife, openCorner, new Vector(atOpen, 0));
        BenchCase now = new(BenchCase.MoveVertex(sliced, closedCorner, new Vector(atClosed, 0)));

        double depthAtFoot = atClosed + ((atOpen - atClosed) * foot / between);
        Point footPoint = rear + (along * foot);
        double expectedTurn = depthAtFoot / (footPoint - knife.CentrePin.Centre).Dot(along);
        double expectedRest = ((atClosed - atOpen) / between) + expectedTurn;

        double turn = (was.HalfStop.Lowest - now.HalfStop.Lowest).Radians;
        double rest = (now.HalfStop.BladeAngle - was.HalfStop.BladeAngle).Radians;
        Assert.Equal(expectedTurn, turn, 0.02 * Math.Abs(expectedTurn) + 2e-6);
        Assert.Equal(expectedRest, rest, 0.02 * Math.Abs(expectedRest) + 2e-5);
    }
}
