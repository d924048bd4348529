using Flushback.Geometry.Offsets;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Offsets;

/// <summary>Thousands of edges: right, and soon done (a run without boxes would take minutes here).</summary>
public class LargeOffsetTests
{
    [Fact]
    public void A_polygon_of_ten_thousand_sides_grows_by_the_formulas_of_Steiner()
    {
        Outline polygon = Polygon(10_000, 50);
        Region grown = Assert.Single(Offset.Of(polygon, 3));
        Near.Equal(polygon.AreaMm2 + (3 * polygon.PerimeterMm) + (9 * Math.PI), grown.AreaMm2, 1e-8);
    }

    [Fact]
    public void It_shrinks_to_a_smaller_one_and_to_nothing()
    {
        Outline polygon = Polygon(500, 50);
        double apothem = 50 * Math.Cos(Math.PI / 500);
        double scale = (apothem - 49) / apothem;
        Near.Equal(polygon.AreaMm2 * scale * scale, Assert.Single(Offset.Of(polygon, -49)).AreaMm2, 1e-8);
        Assert.Empty(Offset.Of(polygon, -apothem));
        Assert.Empty(Offset.Of(polygon, -50));
    }

    [Fact]
    public void A_rack_of_two_thousand_round_teeth_grows_as_one_tooth_does()
    {
        Outline rack = Rack(2_000);
        double widthMm = rack.Bounds.WidthMm;

        // Half circles of 1 become 1.5 on the teeth and 0.5 in the hollows, about the same centres (closed form).
        double teethMm2 = ((2_000 * 1.5 * 1.5) - (1_999 * 0.5 * 0.5)) * Math.PI / 2;
        double barMm2 = ((widthMm + 1) * 20.5) - (2 * (1 - (Math.PI / 4)) * 0.25);
        Near.Equal(barMm2 + teethMm2, Assert.Single(Offset.Of(rack, 0.5)).AreaMm2, 1e-6);
    }

    [Fact]
    public void A_rack_of_two_thousand_round_teeth_keeps_them_in_opening_and_closing()
    {
        Outline rack = Rack(2_000);
        Assert.Same(rack, Assert.Single(Closing.Of(rack, 0.5)).Border);
        Region opened = Assert.Single(Opening.Of(rack, 0.5));
        Near.Equal(rack.AreaMm2 - (2 * (1 - (Math.PI / 4)) * 0.25), opened.AreaMm2, 1e-6);
        Assert.Equal(3_999, opened.Border.Edges.Intersect(rack.Edges).Count(edge => edge.IsArc));
    }

    private static Outline Polygon(int sides, double radius) =>
        Outline.FromVertices([
            .. Enumerable
                .Range(0, sides)
                .Select(i => new Vertex(
                    Point.Origin + (Vector.FromDirection(new Angle(Math.Tau * i / sides)) * radius)
                )),
        ]);

    /// <summary>A bar 20 high with round teeth on top: a half circle of 1 out, then one in, and one out at the end.</summary>
    private static Outline Rack(int teeth)
    {
        double widthMm = (4 * teeth) - 2;
        List<Vertex> vertices = [new Vertex(0, 0), new Vertex(widthMm, 0)];
        for (double x = widthMm; x > 0; x -= 2)
        {
            bool isTooth = (widthMm - x) % 4 == 0;
            vertices.Add(new Vertex(x, 20, isTooth ? 1 : -1));
        }

        vertices.Add(new Vertex(0, 20));
        return Outline.FromVertices([.. vertices]);
    }
}
