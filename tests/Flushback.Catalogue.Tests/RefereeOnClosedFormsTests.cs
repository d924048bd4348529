using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Xunit;

namespace Flushback.Catalogue.Tests;

/// <summary>
/// The referee on cams under a hinged flat follower, psi = beta + asin((R - f) / rho) with rho, beta the polar
/// coordinates of the cam's arc centre about the hinge (oscillating-follower theory as in cam handbooks; values computed
/// from the formula). The cam turns counter-clockwise there, so the blade angle is its opposite.
/// </summary>
public class RefereeOnClosedFormsTests
{
    /// <summary>A follower hinged 40 mm behind the pivot, its straight underside through the hinge.</summary>
    private static readonly Outline _follower = Outline.FromVertices([
        new(-40, 0),
        new(20, 0),
        new(20, 3),
        new(-40, 3),
    ]);

    private static readonly Point _hinge = new(-40, 0);

    /// <summary>Half a sagitta (2.5e-8 mm) at 38 mm from the hinge is 3.8e-8 degrees; the values have 8 decimals.</summary>
    private const double ToleranceDeg = 5e-8;

    [Theory]
    [InlineData(0, 8.31286101)]
    [InlineData(45, 9.87933352)]
    [InlineData(90, 10.76840641)]
    [InlineData(180, 8.96575779)]
    [InlineData(270, 6.47323555)]
    public void An_eccentric_circle_lifts_a_hinged_flat_as_the_cam_handbooks_say(double camDeg, double followerDeg)
    {
        Outline cam = Outline.FromVertices([new Vertex(-4.5, 0, 1), new Vertex(7.5, 0, 1)]);

        Assert.Equal(followerDeg, RotationDeg(cam, camDeg), ToleranceDeg);
    }

    [Theory]
    [InlineData(15, 8.67005416, 8.53241857)]
    [InlineData(30, 9.70483591, 9.46330551)]
    [InlineData(45, 10.16808363, 9.87060809)]
    [InlineData(60, 9.94852266, 9.66084747)]
    public void A_square_cam_lifts_a_hinged_flat_unevenly_about_its_corner(
        double beyondFlushDeg,
        double sharpDeg,
        double roundedDeg
    )
    {
        double camDeg = (Math.Asin(5.0 / 40) * Angle.DegreesPerRadian) + beyondFlushDeg;

        Assert.Equal(sharpDeg, RotationDeg(Square(0), camDeg), ToleranceDeg);
        Assert.Equal(roundedDeg, RotationDeg(Square(0.5), camDeg), ToleranceDeg);
    }

    [Fact]
    public void An_arc_about_the_pivot_does_not_move_the_follower()
    {
        Outline disc = Outline.FromVertices([new Vertex(-4, 0, 1), new Vertex(4, 0, 1)]);
        double expected = Math.Asin(4.0 / 40) * Angle.DegreesPerRadian;

        Assert.All([0, 37.0, 120, 200], camDeg => Assert.Equal(expected, RotationDeg(disc, camDeg), ToleranceDeg));
    }

    private static double RotationDeg(Outline cam, double camDeg)
    {
        BruteForceBench bench = new(cam, _follower, _hinge, new Point(0, 3));
        return bench.PoseAt(Angle.FromDegrees(-camDeg)).SpringRotation.Degrees;
    }

    private static Outline Square(double radiusMm)
    {
        double quarter = Math.Tan(Math.PI / 8);
        double flat = 5 - radiusMm;
        return Outline.FromVertices(
            radiusMm == 0
                ? [new(5, 5), new(-5, 5), new(-5, -5), new(5, -5)]
                :
                [
                    new(5, -flat),
                    new(5, flat, quarter),
                    new(flat, 5),
                    new(-flat, 5, quarter),
                    new(-5, flat),
                    new(-5, -flat, quarter),
                    new(-flat, -5),
                    new(flat, -5, quarter),
                ]
        );
    }
}
