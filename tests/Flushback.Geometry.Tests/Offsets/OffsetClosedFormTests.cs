using Flushback.Geometry.Offsets;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Offsets;

/// <summary>Offsets whose area and length anyone can work out (closed forms of elementary geometry).</summary>
public class OffsetClosedFormTests
{
    /// <summary>Convex shapes, and how far each can shrink before anything of it goes.</summary>
    public static TheoryData<string, double> Convex =>
        new()
        {
            { "square", 1 },
            { "square", 25 },
            { "hexagon", 3 },
            { "slot", 2.5 },
            { "disc", 0.125 },
            { "half disc", 4 },
        };

    /// <summary>Steiner's formulas: area + perimeter r + pi r^2, perimeter + 2 pi r.</summary>
    [Theory]
    [MemberData(nameof(Convex))]
    public void A_convex_outline_grows_by_the_formulas_of_Steiner(string shape, double radius)
    {
        Outline outline = ShapeNamed(shape);
        Region grown = Assert.Single(Offset.Of(outline, radius));
        Near.Equal(outline.AreaMm2 + (outline.PerimeterMm * radius) + (Math.PI * radius * radius), grown.AreaMm2);
        Near.Equal(outline.PerimeterMm + (Math.Tau * radius), grown.PerimeterMm);
        Assert.Empty(grown.Holes);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4.999)]
    public void A_square_shrinks_to_a_smaller_square(double byMm)
    {
        Region shrunk = Assert.Single(Offset.Of(Named.Square(10), -byMm));
        Near.Equal((10 - (2 * byMm)) * (10 - (2 * byMm)), shrunk.AreaMm2);
        Assert.Equal(4, shrunk.Border.Edges.Length);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(5.000001)]
    [InlineData(50)]
    public void Nothing_is_left_of_a_square_offset_inward_by_half_its_side_or_more(double byMm) =>
        Assert.Empty(Offset.Of(Named.Square(10), -byMm));

    [Theory]
    [InlineData(3)]
    [InlineData(3.0000001)]
    [InlineData(10)]
    public void Nothing_is_left_of_a_disc_offset_inward_by_its_radius_or_more(double byMm) =>
        Assert.Empty(Offset.Of(Named.Disc(3), -byMm));

    [Fact]
    public void A_square_loses_four_less_pi_times_the_radius_squared_by_opening()
    {
        Region opened = Assert.Single(Opening.Of(Named.Square(10), 2));
        Near.Equal(100 - ((4 - Math.PI) * 4), opened.AreaMm2);
        Near.Equal(40 - ((8 - Math.Tau) * 2), opened.PerimeterMm);
        Assert.Equal(8, opened.Border.Edges.Length);
    }

    [Fact]
    public void What_loses_nothing_by_opening_or_closing_stays_the_same_object()
    {
        Outline slot = Named.Slot(20, 3);
        Assert.Same(slot, Assert.Single(Opening.Of(slot, 2)).Border);
        Assert.Same(slot, Assert.Single(Opening.Of(slot, 2.999)).Border);
        Outline square = Named.Square(10);
        Assert.Same(square, Assert.Single(Closing.Of(square, 7)).Border);
    }

    private static Outline ShapeNamed(string name) =>
        name switch
        {
            "square" => Named.Square(10),
            "hexagon" => Named.Hexagon(4),
            "slot" => Named.Slot(20, 3),
            "disc" => Named.Disc(3),
            "half disc" => Outline.FromVertices([new Vertex(-3, 0), new Vertex(3, 0, 1)]),
            _ => throw new ArgumentException(name, nameof(name)),
        };
}
