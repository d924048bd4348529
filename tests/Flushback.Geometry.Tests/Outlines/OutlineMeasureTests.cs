using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Outlines;

/// <summary>Areas and lengths of known shapes. Source: elementary geometry.</summary>
public class OutlineMeasureTests
{
    [Fact]
    public void A_circle_of_two_half_bulges_has_the_area_of_its_disc()
    {
        Outline circle = Outline.FromVertices([new Vertex(0, 0, 1), new Vertex(10, 0, 1)]);
        Near.Equal(78.53981633974483, circle.SignedAreaMm2);
        Near.Equal(10 * Math.PI, circle.PerimeterMm);
        Assert.True(circle.IsCounterClockwise);
        Near.Equal(new Point(5, 0), circle.Bounds.Centre);
        Near.Equal(10, circle.Bounds.WidthMm);
        Near.Equal(10, circle.Bounds.HeightMm);
    }

    [Fact]
    public void A_circle_drawn_the_other_way_has_a_negative_signed_area()
    {
        Outline circle = Outline.FromVertices([new Vertex(0, 0, -1), new Vertex(10, 0, -1)]);
        Near.Equal(-78.53981633974483, circle.SignedAreaMm2);
        Near.Equal(78.53981633974483, circle.AreaMm2);
        Assert.True(circle.CounterClockwise().IsCounterClockwise);
    }

    [Fact]
    public void A_square_has_its_side_squared_and_four_sides()
    {
        Outline square = Named.Square(10);
        Assert.Equal(100, square.SignedAreaMm2);
        Assert.Equal(40, square.PerimeterMm);
        Assert.Equal(new Box(0, 0, 10, 10), square.Bounds);
    }

    [Fact]
    public void A_hexagon_is_six_triangles()
    {
        Outline hexagon = Named.Hexagon(4);
        Near.Equal(6 * Math.Sqrt(3) / 4 * 16, hexagon.SignedAreaMm2);
        Near.Equal(24, hexagon.PerimeterMm);
    }

    [Fact]
    public void A_slot_is_a_rectangle_and_a_disc()
    {
        Outline slot = Named.Slot(20, 3);
        Near.Equal((20 * 6) + (9 * Math.PI), slot.SignedAreaMm2);
        Near.Equal(40 + (6 * Math.PI), slot.PerimeterMm);
        Assert.True(slot.Bounds.Grown(1e-12).Contains(new Point(23, 0)));
        Near.Equal(26, slot.Bounds.WidthMm);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(90)]
    [InlineData(200)]
    [InlineData(350)]
    public void A_sector_has_half_radius_squared_times_its_angle(double degrees)
    {
        const double radius = 7;
        Angle angle = Angle.FromDegrees(degrees);
        Point rim = new(radius, 0);
        Point end = Point.Origin + (Vector.FromDirection(angle) * radius);
        Outline sector = Outline.FromVertices([
            new Vertex(Point.Origin),
            new Vertex(rim, Math.Tan(angle.Radians / 4)),
            new Vertex(end),
        ]);
        Near.Equal(radius * radius * angle.Radians / 2, sector.SignedAreaMm2);
        Near.Equal((2 * radius) + (radius * angle.Radians), sector.PerimeterMm);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(120)]
    [InlineData(300)]
    public void A_segment_has_half_radius_squared_times_angle_less_its_sine(double degrees)
    {
        const double radius = 5;
        double sweep = Angle.FromDegrees(degrees).Radians;
        Point end = Point.Origin + (Vector.FromDirection(new Angle(sweep)) * radius);
        Outline segment = Outline.FromVertices([
            new Vertex(new Point(radius, 0), Math.Tan(sweep / 4)),
            new Vertex(end),
        ]);
        Near.Equal(radius * radius * (sweep - Math.Sin(sweep)) / 2, segment.SignedAreaMm2);
    }

    [Fact]
    public void A_drawing_far_from_its_origin_keeps_the_digits_of_its_area()
    {
        Outline far = Named.Slot(20, 3).Transformed(new RigidMotion(Angle.Zero, new Vector(90_000, -90_000)));
        Near.Equal(Named.Slot(20, 3).AreaMm2, far.AreaMm2);
    }

    [Fact]
    public void The_vertices_make_the_same_outline_again()
    {
        Outline slot = Named.Slot(20, 3);
        Assert.Equal(slot.Edges.AsEnumerable(), Outline.FromVertices(slot.Vertices.AsSpan()).Edges);
    }

    [Fact]
    public void One_vertex_or_a_coordinate_that_is_no_number_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Outline.FromVertices([new Vertex(0, 0)]));
        Assert.Throws<ArgumentException>(() => Outline.FromVertices([new Vertex(0, double.NaN), new Vertex(1, 0)]));
        Assert.Throws<ArgumentException>(() =>
            Outline.FromVertices([new Vertex(0, 0, double.PositiveInfinity), new Vertex(1, 0)])
        );
    }
}
