using Flushback.Geometry.Distances;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Distances;

/// <summary>Distances anyone can work out. Source: elementary geometry.</summary>
public class DistanceTests
{
    private static readonly Edge UpperHalf = new(new Point(5, 0), new Point(-5, 0), 1);

    public static TheoryData<string, Edge, Edge, double> Pairs =>
        new()
        {
            { "parallel lines", Line(0, 0, 10, 0), Line(2, 3, 8, 3), 3 },
            { "lines end to end", Line(0, 0, 10, 0), Line(13, 4, 20, 4), 5 },
            { "lines that cross", Line(0, 0, 10, 10), Line(0, 10, 10, 0), 0 },
            { "an end on a line", Line(0, 0, 10, 0), Line(4, 0, 4, 7), 0 },
            { "a line over an arc", UpperHalf, Line(-9, 7, 9, 7), 2 },
            { "a line under a half circle is nearest to its ends", UpperHalf, Line(-9, -2, 9, -2), 2 },
            { "a line within a half circle", UpperHalf, Line(-1, 1, 1, 1), 5 - Math.Sqrt(2) },
            { "a line through an arc", UpperHalf, Line(0, 1, 0, 9), 0 },
            { "a line tangent to an arc", UpperHalf, Line(-9, 5, 9, 5), 0 },
            { "a half circle beside another", UpperHalf, LowerHalf(new Point(10, 6), 3), Math.Sqrt(136) - 8 },
            { "an arc within a larger one, nearest away from its centre", UpperHalf, Half(new Point(0, 1), 2), 2 },
            { "arcs about one centre", UpperHalf, Half(Point.Origin, 2), 3 },
            { "arcs that cross", UpperHalf, Half(new Point(5, 0), 5), 0 },
            { "arcs that touch from outside", UpperHalf, LowerHalf(new Point(8, 6), 5), 0 },
            { "arcs that touch from inside", UpperHalf, Half(new Point(0, 2), 3), 0 },
        };

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Two_edges_are_as_far_apart_as_worked_out(string name, Edge a, Edge b, double expected)
    {
        Assert.NotEmpty(name);
        AssertWay(a, b, expected, Distance.Between(a, b));
        AssertWay(b, a, expected, Distance.Between(b, a));
        AssertWay(a.Reversed, b, expected, Distance.Between(a.Reversed, b));
        AssertWay(a, b.Reversed, expected, Distance.Between(a, b.Reversed));
    }

    [Fact]
    public void A_point_is_nearest_to_the_foot_or_to_an_end_of_a_line()
    {
        Edge line = Line(0, 0, 10, 0);
        Assert.Equal(new Nearest(3, new Point(4, 3), new Point(4, 0)), Distance.Between(new Point(4, 3), line));
        Assert.Equal(new Nearest(5, new Point(-3, 4), new Point(0, 0)), Distance.Between(new Point(-3, 4), line));
        Assert.Equal(new Nearest(5, new Point(13, 4), new Point(10, 0)), Distance.Between(new Point(13, 4), line));
    }

    [Fact]
    public void A_point_is_nearest_to_an_arc_along_its_radius_or_at_an_end()
    {
        Near.Equal(new Point(3, 4), Distance.Between(new Point(6, 8), UpperHalf).OnSecond);
        Near.Equal(new Point(3, 4), Distance.Between(new Point(0.3, 0.4), UpperHalf).OnSecond);
        Near.Equal(new Point(5, 0), Distance.Between(new Point(6, -8), UpperHalf).OnSecond);
        Near.Equal(5, Distance.Between(Point.Origin, UpperHalf).DistanceMm);
    }

    [Fact]
    public void A_square_beside_a_disc()
    {
        Outline disc = Named.Disc(5).Transformed(new RigidMotion(Angle.Zero, new Vector(18, 4)));
        Nearest way = Distance.Between(Named.Square(10), disc);
        Near.Equal(3, way.DistanceMm);
        Near.Equal(new Point(10, 4), way.OnFirst);
        Near.Equal(new Point(13, 4), way.OnSecond);
    }

    [Fact]
    public void An_outline_within_another_is_as_far_as_its_border()
    {
        Outline inner = Named.Square(2).Transformed(new RigidMotion(Angle.Zero, new Vector(3, 4)));
        Near.Equal(3, Distance.Between(Named.Square(10), inner).DistanceMm);
    }

    [Fact]
    public void No_edges_are_infinitely_far() =>
        Assert.Equal(double.PositiveInfinity, Distance.Between([], Named.Square(1).Edges.AsSpan()).DistanceMm);

    private static void AssertWay(Edge a, Edge b, double expected, Nearest way)
    {
        Near.Equal(expected, way.DistanceMm);
        Near.Equal(expected, way.OnFirst.DistanceTo(way.OnSecond));
        Near.Equal(0, Distance.Between(way.OnFirst, a).DistanceMm);
        Near.Equal(0, Distance.Between(way.OnSecond, b).DistanceMm);
    }

    private static Edge Line(double x1, double y1, double x2, double y2) => new(new Point(x1, y1), new Point(x2, y2));

    /// <summary>The upper half of a circle.</summary>
    private static Edge Half(Point centre, double radius) =>
        new(centre + new Vector(radius, 0), centre - new Vector(radius, 0), 1);

    private static Edge LowerHalf(Point centre, double radius) => Half(centre, radius) with { Bulge = -1 };
}
