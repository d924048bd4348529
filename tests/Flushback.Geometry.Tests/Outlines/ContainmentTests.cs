using CsCheck;
using Flushback.Geometry.Approximation;
using Flushback.Geometry.Tests.Shapes;
using NetTopologySuite.Algorithm.Locate;

namespace Flushback.Geometry.Tests.Outlines;

public class ContainmentTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(3, 0)]
    [InlineData(-4.999, 0)]
    [InlineData(0, 4.999)]
    [InlineData(3, -3.9)]
    public void A_point_on_or_off_the_chord_of_two_half_circles_is_inside_the_disc(double x, double y) =>
        Assert.True(Named.Disc(5).Contains(new Point(x, y)));

    [Theory]
    [InlineData(5.001, 0)]
    [InlineData(-5.001, 0)]
    [InlineData(4, 4)]
    [InlineData(-20, 0)]
    [InlineData(20, 0)]
    public void A_point_beyond_the_radius_is_outside_the_disc(double x, double y) =>
        Assert.False(Named.Disc(5).Contains(new Point(x, y)));

    [Fact]
    public void Inner_points_on_a_chord_count_once_whichever_way_the_chord_runs()
    {
        for (int degrees = 0; degrees < 360; degrees += 15)
        {
            RigidMotion turn = RigidMotion.RotationAbout(Point.Origin, Angle.FromDegrees(degrees));
            Outline disc = Named.Disc(5).Transformed(turn);
            for (double along = -4.5; along <= 4.5; along += 0.5)
            {
                Point onChord = turn.Apply(new Point(along, 0));
                Assert.True(disc.Contains(onChord), $"{onChord} at {degrees} degrees");
                Assert.True(disc.Reversed().Contains(onChord), $"{onChord} at {degrees} degrees, reversed");
                Near.Equal(5 - Math.Abs(along), disc.SignedDistanceMm(onChord));
            }
        }
    }

    [Fact]
    public void A_point_level_with_a_corner_or_a_flat_side_is_told_right()
    {
        Outline step = Named.Polygon((0, 0), (10, 0), (10, 5), (5, 5), (5, 10), (0, 10));
        Assert.True(step.Contains(new Point(2, 5)));
        Assert.True(step.Contains(new Point(2, 0.001)));
        Assert.False(step.Contains(new Point(-1, 5)));
        Assert.False(step.Contains(new Point(-1, 0)));
        Assert.False(step.Contains(new Point(-1, 10)));
        Assert.False(step.Contains(new Point(7, 7)));
    }

    [Fact]
    public void Every_point_of_the_border_counts_as_inside() =>
        Gen.Select(Any.Outline, Gen.Int[0, 13], Gen.Double[0, 1])
            .Sample(
                (outline, edge, fraction) =>
                {
                    Point onBorder = outline.Edges[edge % outline.Edges.Length].PointAt(fraction);
                    Assert.True(outline.Contains(onBorder));
                    Near.Equal(0, outline.SignedDistanceMm(onBorder));
                }
            );

    [Fact]
    public void A_step_off_the_border_goes_in_on_the_left_and_out_on_the_right() =>
        Gen.Select(Any.Outline, Gen.Int[0, 13], Gen.Double[0.05, 0.95])
            .Sample(
                (outline, edge, fraction) =>
                {
                    Outline turned = outline.CounterClockwise();
                    Edge border = turned.Edges[edge % turned.Edges.Length];
                    Vector outward = border.OutwardNormalAt(fraction);
                    Point onBorder = border.PointAt(fraction);
                    Assert.False(turned.Contains(onBorder + (outward * 2e-9)));
                    Assert.True(turned.Contains(onBorder - (outward * 2e-9)));
                }
            );

    [Fact]
    public void Away_from_the_border_it_agrees_with_a_point_in_polygon_test_on_the_flattened_outline()
    {
        const double sagitta = 1e-3;
        Gen.Select(Any.Outline, Any.Point.Array[30])
            .Sample(
                (outline, points) =>
                {
                    SimplePointInAreaLocator referee = new(Polygons.Of(outline, [], sagitta));
                    foreach (Point p in points)
                    {
                        double signed = outline.SignedDistanceMm(p);
                        if (Math.Abs(signed) > sagitta)
                        {
                            bool inside =
                                referee.Locate(new NetTopologySuite.Geometries.Coordinate(p.X, p.Y))
                                == NetTopologySuite.Geometries.Location.Interior;
                            Assert.Equal(inside, signed > 0);
                            Assert.Equal(inside, outline.Contains(p));
                        }
                    }
                }
            );
    }

    [Fact]
    public void Inside_a_circle_the_signed_distance_is_what_is_left_of_the_radius() =>
        Any.Point.Sample(p => Near.Equal(5 - p.DistanceTo(Point.Origin), Named.Disc(5).SignedDistanceMm(p)));
}
