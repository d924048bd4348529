using Flushback.Catalogue.Designs;
using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Xunit;

namespace Flushback.Catalogue.Tests;

public class RefereeOnKnivesTests
{
    /// <summary>Half a sagitta on either part, by the levers of dial and contact, and what bisection leaves.</summary>
    private const double ToleranceMm = 2e-7;

    /// <summary>
    /// A face at distance h from the pivot lies flush on the underside: both are then the same line, whose distance from
    /// the centre pin is that of the drawn underside. Elementary geometry.
    /// </summary>
    [Theory]
    [InlineData(90, 0.127)]
    [InlineData(180, 0.381)]
    public void Hollow_faces_with_sharp_ends_make_the_dial_read_their_distance_from_the_pivot(
        double nominalDeg,
        double readingMm
    )
    {
        KnifeDesign design = KnifeCatalogue.Wagtail;
        BruteForceBench bench = BruteForceBench.For(design.ToKnife());
        Angle about = Angle.FromDegrees(nominalDeg);
        Angle reach = Angle.FromDegrees(5);

        BenchPose rest = bench.RestBetween(about - reach, about + reach);

        // With S = (-42, 4.4) and the underside at y = 4: 42 sin phi + 4.4 cos phi - 0.4 = 4 + reading.
        double phase = Math.Atan2(4.4, 42);
        double phi = Math.Asin((4.4 + readingMm) / Math.Sqrt((42 * 42) + (4.4 * 4.4))) - phase;
        Assert.Equal(phi, rest.SpringRotation.Radians, 1e-8);
        Assert.Equal(nominalDeg - (phi * Angle.DegreesPerRadian), rest.BladeAngle.Degrees, 1e-5);
        double lift = (42 * Math.Sin(phi)) + (2.6 * (Math.Cos(phi) - 1));
        Assert.Equal(lift, bench.LiftMm(Angle.Zero, rest.SpringRotation), ToleranceMm);
    }

    [Fact]
    public void An_undercut_and_a_square_shoulder_drawn_touching_stop_the_blade_as_drawn()
    {
        foreach (KnifeDesign design in new[] { KnifeCatalogue.Wagtail, KnifeCatalogue.Plover })
        {
            BenchPose stop = BruteForceBench.For(design.ToKnife()).OpenStop()!.Value;

            Assert.Equal(0, stop.BladeAngle.Radians, 1e-8);
            Assert.Equal(0, stop.SpringRotation.Radians, 1e-8);
        }
    }

    /// <summary>
    /// The sharp shoulder of an undercut meets a straight end face: at the stop the shoulder's top, the open corner and
    /// the two straight faces of the spring fix blade and spring, found here by Newton's method on the two distances.
    /// </summary>
    [Fact]
    public void A_gap_drawn_at_the_shoulder_lets_the_blade_over_open_by_what_two_point_contact_says()
    {
        KnifeDesign design = KnifeCatalogue.Wagtail with { Blade = new BladeDesign { ShoulderGapMm = 0.05 } };
        BenchPose stop = BruteForceBench.For(design.ToKnife()).OpenStop()!.Value;

        double slope = Math.Tan(Angle.FromDegrees(80).Radians);
        Point top = new(4.2 - (2.8 / slope) + 0.05, 6.8);
        Point corner = new(-4.127, 4);
        (double theta, double phi) = (0, 0);
        for (int i = 0; i < 20; i++)
        {
            (double onFace, double under) = Misses(theta, phi);
            (double onFaceByTheta, double underByTheta) = Slopes(theta + 1e-6, phi, onFace, under);
            (double onFaceByPhi, double underByPhi) = Slopes(theta, phi + 1e-6, onFace, under);
            double determinant = (onFaceByTheta * underByPhi) - (onFaceByPhi * underByTheta);
            theta -= ((onFace * underByPhi) - (under * onFaceByPhi)) / determinant;
            phi -= ((under * onFaceByTheta) - (onFace * underByTheta)) / determinant;
        }

        Assert.Equal(theta, stop.BladeAngle.Radians, 2e-8);
        Assert.Equal(phi, stop.SpringRotation.Radians, 1e-8);

        (double OnFace, double Under) Misses(double angle, double rotation)
        {
            // Both points carried into the spring's own frame, where underside and end face are as drawn.
            Point s = design.Spring.CentrePin;
            Point t = top.RotatedAbout(Point.Origin, new Angle(-angle)).RotatedAbout(s, new Angle(-rotation));
            Point c = corner.RotatedAbout(Point.Origin, new Angle(-angle)).RotatedAbout(s, new Angle(-rotation));
            return (t.X - (4.2 - ((t.Y - 4) / slope)), c.Y - 4);
        }

        (double OnFace, double Under) Slopes(double angle, double rotation, double onFace, double under)
        {
            (double face, double below) = Misses(angle, rotation);
            return ((face - onFace) / 1e-6, (below - under) / 1e-6);
        }
    }

    [Fact]
    public void A_flat_that_falls_to_the_rear_holds_the_blade_open_before_the_shoulder_is_met()
    {
        TangDesign falling = new() { OpenTiltDeg = -1 };
        KnifeDesign design = KnifeCatalogue.Wagtail with
        {
            Tang = falling,
            Blade = new BladeDesign { ShoulderGapMm = 0.3 },
        };
        BruteForceBench bench = BruteForceBench.For(design.ToKnife());

        BenchPose stop = bench.OpenStop()!.Value;
        BenchPose rest = bench.OpenRest()!.Value;

        // The flat comes to lie on the underside, which the spring has turned by its own rotation.
        Assert.Equal(1 - rest.SpringRotation.Degrees, rest.BladeAngle.Degrees, 1e-5);
        Assert.True(stop.BladeAngle < rest.BladeAngle);
        Assert.True(stop.SpringRotation > rest.SpringRotation);
    }

    [Fact]
    public void No_pose_is_free_past_the_open_stop_and_every_pose_is_free_from_there_to_closed()
    {
        foreach (KnifeDesign design in KnifeCatalogue.All)
        {
            BruteForceBench bench = BruteForceBench.For(design.ToKnife());
            BenchPose stop = bench.OpenStop()!.Value;
            Angle little = Angle.FromDegrees(0.01);

            Assert.False(bench.PoseAt(stop.BladeAngle - little).IsFree, design.Name);
            IEnumerable<BenchPose> swing = bench.Sweep(stop.BladeAngle + little, Angle.FromDegrees(180), 40);
            Assert.All(swing, pose => Assert.True(pose.IsFree, design.Name));
        }
    }

    [Fact]
    public void The_nose_trapped_under_the_shoulder_is_not_lifted_over_it()
    {
        BruteForceBench bench = BruteForceBench.For(KnifeCatalogue.Wagtail.ToKnife());

        // Half a degree before the stop the shoulder still overhangs; the upper free interval begins above 2 mm.
        BenchPose pose = bench.PoseAt(Angle.FromDegrees(0.5));

        Assert.True(pose.IsFree);
        Assert.InRange(bench.LiftMm(Angle.Zero, pose.SpringRotation), 0, 0.05);
    }
}
