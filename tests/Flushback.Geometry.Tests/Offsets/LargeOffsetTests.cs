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
        Outline polygon = Polygon(2_000, 50);
        double apothem = 50 * Math.Cos(Math.PI / 2_000);
        double scale = (apothem - 49) / apothem;
        Near.Equal(polygon.AreaMm2 * scale * scale, Assert.Single(Offset.Of(polygon, -49)).AreaMm2, 1e-8);
        Assert.Empty(Offset.Of(polygon, -50));
    }

    [Fact]
    public void A_rack_of_two_thousand_round_teeth_opens_and_closes_as_one_tooth_does()
    {
        // Half circles of 1 out and in by turns: hollows of 1 stay, and nothing is lost by the smaller radius.
        Outline rack = Rack(2_000);
        Assert.Same(rack, Assert.Single(Opening.Of(rack, 0.5)).Border);
        Assert.Same(rack, Assert.Single(Closing.Of(rack, 0.5)).Border);

        // Grown by 0.5 each tooth is a half circle of 1.5, each hollow one of 0.5 (closed form).
        Region grown = Assert.Single(Offset.Of(rack, 0.5));
        double straight = 8_000 * 20;
        double ends = 2 * (20 * 0.5);
        Near.Equal(straight + (8_000 * 0.5) + ends + (1_999 * 0) + TeethMm2() + CornersMm2(), grown.AreaMm2, 1e-5);

        static double TeethMm2() => 2_000 * Math.PI * ((1.5 * 1.5) - (0.5 * 0.5)) / 2;

        static double CornersMm2() => 0;
    }

    private static Outline Polygon(int sides, double radius) =>
        Outline.FromVertices([
            .. Enumerable
                .Range(0, sides)
                .Select(i => new Vertex(
                    Point.Origin + (Vector.FromDirection(new Angle(Math.Tau * i / sides)) * radius)
                )),
        ]);

    /// <summary>A bar 20 high with teeth on top, 4 mm each: a half circle of 1 out, then one in.</summary>
    private static Outline Rack(int teeth)
    {
        List<Vertex> vertices = [new Vertex(0, 0), new Vertex(4 * teeth, 0)];
        for (int i = teeth; i > 0; i--)
        {
            vertices.Add(new Vertex(4 * i, 20, 1));
            vertices.Add(new Vertex((4 * i) - 2, 20, -1));
        }

        vertices.Add(new Vertex(0, 20));
        return Outline.FromVertices([.. vertices]);
    }
}
