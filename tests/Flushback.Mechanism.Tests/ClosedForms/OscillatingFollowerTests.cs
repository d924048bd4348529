using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;

namespace Flushback.Mechanism.Tests.ClosedForms;

/// <summary>
/// Straight follower on a hinge at distance d: psi = beta + asin((R - f) / rho), rho and beta the place of the arc's
/// centre seen from the hinge; the largest over the cam's arcs and corners (R = 0) counts. Elementary geometry, as in
/// cam handbooks for oscillating flat-faced followers.
/// </summary>
public sealed class OscillatingFollowerTests
{
    [Theory]
    [InlineData(0, 8.31286101, 0.036144578)]
    [InlineData(45, 9.87933352, 0.030194431)]
    [InlineData(90, 10.76840641, 0.007081573)]
    [InlineData(180, 8.96575779, -0.038961039)]
    [InlineData(270, 6.47323555, -0.004273023)]
    public void An_eccentric_circle_turns_a_hinged_flat_follower_as_the_closed_form_says(
        double camDegrees,
        double followerDegrees,
        double slope
    )
    {
        BenchSolver solver = HingedFollower.Solver(HingedFollower.Disc(new Point(1.5, 0), 6), hingeMm: 40);

        Assert.Equal(followerDegrees, solver.FollowerDegrees(camDegrees), 8);
        Assert.Equal(slope, -solver.PoseAt(Angle.FromDegrees(-camDegrees)).Slope, 9);
    }

    [Fact]
    public void An_eccentric_circle_agrees_with_the_closed_form_to_1e_9_at_every_degree()
    {
        const double Hinge = 40;
        const double Offset = 0.7;
        BenchSolver solver = HingedFollower.Solver(HingedFollower.Disc(new Point(1.5, 0), 6), Hinge, Offset);
        for (int degrees = 0; degrees < 360; degrees++)
        {
            (double sin, double cos) = Math.SinCos(Angle.FromDegrees(degrees).Radians);
            Vector toCentre = new((1.5 * cos) + Hinge, 1.5 * sin);
            double psi = toCentre.Direction.Radians + Math.Asin((6 - Offset) / toCentre.Length);
            Assert.Equal(psi, Angle.FromDegrees(solver.FollowerDegrees(degrees)).Radians, 1e-9);
        }
    }

    [Theory]
    [InlineData(15, 0, 8.67005416)]
    [InlineData(15, 0.5, 8.53241857)]
    [InlineData(30, 0, 9.70483591)]
    [InlineData(30, 0.5, 9.46330551)]
    [InlineData(45, 0, 10.16808363)]
    [InlineData(45, 0.5, 9.87060809)]
    [InlineData(60, 0, 9.94852266)]
    [InlineData(60, 0.5, 9.66084747)]
    public void A_square_cam_under_a_hinged_follower_is_not_symmetric_about_45_degrees(
        double pastFlushDegrees,
        double cornerRadiusMm,
        double followerDegrees
    )
    {
        double flush = Math.Asin(5.0 / 40) * Angle.DegreesPerRadian;
        BenchSolver solver = HingedFollower.Solver(HingedFollower.Square(5, cornerRadiusMm), hingeMm: 40);

        Assert.Equal(7.18075578, flush, 8);
        Assert.Equal(followerDegrees, solver.FollowerDegrees(flush + pastFlushDegrees), 8);
    }

    [Theory]
    [InlineData(15, 0, 1.12372436)]
    [InlineData(30, 0, 1.83012702)]
    [InlineData(45, 0, 2.07106781)]
    [InlineData(15, 1, 0.89897949)]
    [InlineData(45, 1, 1.65685425)]
    public void A_square_cam_under_a_follower_far_away_lifts_as_under_a_flat_moving_straight_up(
        double camDegrees,
        double cornerRadiusMm,
        double liftMm
    )
    {
        // a (sqrt 2 cos(45 deg - theta) - 1), with a - r for a; the hinge is a kilometre away, which leaves
        // the lever's change of a few parts in a million.
        const double Hinge = 1e6;
        Outline bar = Outline.FromVertices([new(-20, 5), new(20, 5), new(20, 8), new(-20, 8)]);
        BenchSolver solver = HingedFollower.Solver(HingedFollower.Square(5, cornerRadiusMm), bar, new Point(-Hinge, 0));

        SpringPose pose = solver.PoseAt(Angle.FromDegrees(-camDegrees));

        Assert.Equal(liftMm, pose.Lowest.Radians * (Hinge + pose.Support.At.X), 1e-5);
    }

    [Fact]
    public void An_arc_about_the_pivot_holds_the_follower_still_and_gives_no_torque()
    {
        BenchSolver solver = HingedFollower.Solver(HingedFollower.Disc(Point.Origin, 6), hingeMm: 40);
        for (int degrees = 0; degrees < 360; degrees += 7)
        {
            SpringPose pose = solver.PoseAt(Angle.FromDegrees(degrees));
            Assert.Equal(Math.Asin(6.0 / 40), pose.Lowest.Radians, 1e-12);
            Assert.Equal(0, pose.Slope, 1e-12);
        }
    }

    [Fact]
    public void A_reuleaux_triangle_keeps_its_width_between_follower_positions()
    {
        // Constant width 10: h(0) = 10 / sqrt 3, h(60) = 10 - 10 / sqrt 3 (elementary geometry).
        double circumradius = 10 / Math.Sqrt(3);
        Vertex[] corners =
        [
            .. new[] { 90.0, 210, 330 }.Select(degrees =>
            {
                Point p = Point.Origin + (Vector.FromDirection(Angle.FromDegrees(degrees)) * circumradius);
                return new Vertex(p, Math.Tan(Math.PI / 12));
            }),
        ];
        const double Hinge = 1e6;
        Outline bar = Outline.FromVertices([new(-20, 5), new(20, 5), new(20, 8), new(-20, 8)]);
        BenchSolver solver = HingedFollower.Solver(Outline.FromVertices(corners), bar, new Point(-Hinge, 0));
        double Height(double camDegrees)
        {
            SpringPose pose = solver.PoseAt(Angle.FromDegrees(-camDegrees));
            return 5 + (pose.Lowest.Radians * (Hinge + pose.Support.At.X));
        }

        Assert.Equal(5.77350269, Height(0), 1e-6);
        Assert.Equal(4.22649731, Height(60), 1e-6);
        for (int degrees = 0; degrees < 180; degrees += 11)
        {
            Assert.Equal(10, Height(degrees) + Height(degrees + 180), 2e-5);
        }
    }

    [Fact]
    public void Arc_on_arc_touches_where_the_line_of_centres_says()
    {
        // Follower: a disc of radius 4 on an arm; cam: an eccentric circle of radius 6. They touch when the centres are
        // 10 apart: a triangle with sides 40-ish (hinge to cam centre), 38 (arm) and 10 (law of cosines).
        const double Hinge = 40;
        const double Arm = 38;
        Outline follower = HingedFollower.Disc(new Point(-Hinge + Arm, 12), 4);
        double armAngle = Math.Atan2(12, Arm);
        double armLength = Math.Sqrt((Arm * Arm) + (12 * 12));
        BenchSolver solver = HingedFollower.Solver(
            HingedFollower.Disc(new Point(1.5, 0), 6),
            follower,
            new Point(-Hinge, 0)
        );
        for (int degrees = 0; degrees < 360; degrees += 5)
        {
            Vector toCam = new(
                (1.5 * Math.Cos(degrees / Angle.DegreesPerRadian)) + Hinge,
                1.5 * Math.Sin(degrees / Angle.DegreesPerRadian)
            );
            double cosine = (toCam.LengthSquared + (armLength * armLength) - 100) / (2 * toCam.Length * armLength);
            double expected = toCam.Direction.Radians + Math.Acos(cosine) - armAngle;
            Assert.Equal(expected, Angle.FromDegrees(solver.FollowerDegrees(degrees)).Radians, 1e-9);
        }
    }
}
