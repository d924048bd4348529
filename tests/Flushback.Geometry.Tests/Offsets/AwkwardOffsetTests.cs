using System.Collections.Immutable;
using Flushback.Geometry.Offsets;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Offsets;

/// <summary>Exact fits, tangent joints, cusps and crumbs; each with the closed form of what has to come out.</summary>
public class AwkwardOffsetTests
{
    /// <summary>Two squares of 10 joined by a neck 4 wide and 6 long.</summary>
    private static readonly Outline Dumbbell = Named.Polygon(
        (0, 0),
        (10, 0),
        (10, 3),
        (16, 3),
        (16, 0),
        (26, 0),
        (26, 10),
        (16, 10),
        (16, 7),
        (10, 7),
        (10, 10),
        (0, 10)
    );

    /// <summary>
    /// Half a crescent: half a circle of 10, a line, and half a circle of 5 that comes back tangent to the first, so that
    /// the metal between them ends in a cusp. Area (100 - 25) pi / 2.
    /// </summary>
    private static readonly Outline HalfCrescent = Outline.FromVertices([
        new Vertex(10, 0, 1),
        new Vertex(-10, 0),
        new Vertex(0, 0, -1),
    ]);

    [Theory]
    [InlineData(1.9, 1)]
    [InlineData(2, 2)]
    [InlineData(2.1, 2)]
    [InlineData(4.9, 2)]
    [InlineData(5, 0)]
    public void A_neck_breaks_where_it_is_no_wider_than_twice_the_distance(double inwardMm, int parts) =>
        Assert.Equal(parts, Offset.Of(Dumbbell, -inwardMm).Length);

    [Fact]
    public void A_neck_that_vanishes_exactly_leaves_the_arcs_about_its_corners()
    {
        // Each square keeps 6 by 6 and, towards the neck, what arcs of 2 about two corners 4 apart leave of 2 by 4.
        ImmutableArray<Region> parts = Offset.Of(Dumbbell, -2);
        Assert.All(parts, part => Near.Equal(36 + 8 - (2 * Math.PI), part.AreaMm2));
    }

    [Fact]
    public void A_bay_with_a_narrow_mouth_closes_and_leaves_a_hole()
    {
        // A room of 10 by 10 in a block, open to the right through a mouth 2 wide.
        Outline block = Named.Polygon(
            (0, 0),
            (20, 0),
            (20, 9),
            (15, 9),
            (15, 5),
            (5, 5),
            (5, 15),
            (15, 15),
            (15, 11),
            (20, 11),
            (20, 20),
            (0, 20)
        );
        const double by = 1.5;
        Outline hole = Assert.Single(Assert.Single(Offset.Of(block, by)).Holes);

        // 7 by 7, and in the mouth what lies before two circles about its corners: between their side of the room and
        // where they cross, the integral of r - sqrt(r^2 - u^2) over u from 0 to 1, twice.
        double underCircle = (Math.Sqrt((by * by) - 1) + (by * by * Math.Asin(1 / by))) / 2;
        Near.Equal(49 + (2 * (by - underCircle)), hole.AreaMm2);
    }

    [Fact]
    public void Arcs_of_just_the_distance_become_sharp_corners()
    {
        Outline rounded = Assert.Single(Opening.Of(Named.Square(10), 2)).Border;
        Region shrunk = Assert.Single(Offset.Of(rounded, -2));
        Near.Equal(36, shrunk.AreaMm2);
        Assert.Equal(4, shrunk.Border.Edges.Length);
        Assert.DoesNotContain(shrunk.Border.Edges, edge => edge.IsArc);
    }

    [Fact]
    public void A_slot_offset_inward_by_its_radius_has_no_area_left()
    {
        Assert.Empty(Offset.Of(Named.Slot(20, 3), -3));
        Assert.Single(Offset.Of(Named.Slot(20, 3), -2.999));
    }

    /// <summary>All corners point out and nothing meets, so Steiner's formulas hold, a half turn at the cusp included.</summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(4.9)]
    public void A_cusp_grows_half_a_circle(double byMm)
    {
        double expected = (37.5 * Math.PI) + (byMm * (10 + (15 * Math.PI))) + (Math.PI * byMm * byMm);
        Near.Equal(expected, Assert.Single(Offset.Of(HalfCrescent, byMm)).AreaMm2);

        Region block = new(
            Named.Square(60).Transformed(new RigidMotion(default, new Vector(-30, -30))),
            [HalfCrescent]
        );
        double side = 60 - (2 * byMm);
        Near.Equal((side * side) - expected, Assert.Single(Offset.Of(block, -byMm)).AreaMm2);
    }

    /// <summary>
    /// A half circle and a line off its tangent by a hundred-thousandth: they cross again within a nanometre of the corner,
    /// which counts as touching. The corner is a cusp of the void then, not of the metal.
    /// </summary>
    [Fact]
    public void A_cusp_whose_edges_cross_by_less_than_touching_is_still_one()
    {
        Outline outline = Outline.FromVertices([
            new Vertex(0, -5),
            new Vertex(20, -5, -1),
            new Vertex(20, 5),
            new Vertex(0, 5 - 2e-4),
        ]);
        Region grown = Assert.Single(Offset.Of(outline, 1));

        // 20 by 10 less half a circle of 5; grown by 1: four sides, and corners of a quarter, a quarter, and a half twice.
        double expected = 200 - (12.5 * Math.PI) + (50 + (5 * Math.PI)) + Math.PI;
        Near.Equal(expected, grown.AreaMm2, 0.01);
    }

    [Fact]
    public void Joints_in_one_line_change_nothing()
    {
        Outline square = Named.Square(10);
        Outline jointed = Outline.FromVertices([
            .. square.Edges.SelectMany(edge =>
                Enumerable.Range(0, 500).Select(i => new Vertex(edge.PointAt(i / 500.0)))
            ),
        ]);
        Near.Equal(100 + 40 + Math.PI, Assert.Single(Offset.Of(jointed, 1)).AreaMm2);
        Near.Equal(64, Assert.Single(Offset.Of(jointed, -1)).AreaMm2);
        Near.Equal(100 - (4 - Math.PI), Assert.Single(Opening.Of(jointed, 1)).AreaMm2);
    }

    [Theory]
    [InlineData(6)]
    [InlineData(4)]
    [InlineData(3)]
    public void Joints_tangent_but_for_the_decimals_of_a_drawing_lose_nothing(int decimals)
    {
        Outline slot = Named.Slot(20, 3).Transformed(new RigidMotion(new Angle(0.7), new Vector(17.3, -4.1)));
        Outline drawn = Outline.FromVertices([
            .. slot.Vertices.Select(vertex => new Vertex(
                Math.Round(vertex.Position.X, decimals),
                Math.Round(vertex.Position.Y, decimals),
                vertex.Bulge
            )),
        ]);
        double unit = Math.Pow(10, -decimals);
        Near.Equal(slot.AreaMm2 + slot.PerimeterMm + Math.PI, Offset.Of(drawn, 1).Sum(one => one.AreaMm2), 100 * unit);
        Region opened = Assert.Single(Opening.Of(drawn, 2));
        Near.Equal(drawn.AreaMm2, opened.AreaMm2, unit * unit);
        if (decimals >= 4)
        {
            // What a corner loses here is less than a nanometre high.
            Assert.Same(drawn, opened.Border);
        }
    }

    [Fact]
    public void Edges_of_a_nanometre_are_no_hindrance()
    {
        Outline nicked = Outline.FromVertices([
            new Vertex(0, 0),
            new Vertex(10, 0),
            new Vertex(10, 10),
            new Vertex(5 + 2e-6, 10),
            new Vertex(5 + 1e-6, 10 - 2e-6),
            new Vertex(5, 10),
            new Vertex(0, 10),
        ]);
        Near.Equal(100 + 40 + Math.PI, Assert.Single(Offset.Of(nicked, 1)).AreaMm2, 1e-4);
        Near.Equal(64, Assert.Single(Offset.Of(nicked, -1)).AreaMm2, 1e-4);
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(1)]
    public void A_ring_of_full_circles_grows_and_shrinks_on_both_sides(double byMm)
    {
        Region ring = new(Named.Disc(10), [Named.Disc(4)]);
        Region moved = Assert.Single(Offset.Of(ring, byMm));
        Near.Equal(Math.PI * (((10 + byMm) * (10 + byMm)) - ((4 - byMm) * (4 - byMm))), moved.AreaMm2);
        Assert.Equal(4, moved.Outlines.Sum(outline => outline.Edges.Length));
    }

    [Fact]
    public void A_hole_fills_at_its_radius_and_a_ring_goes_at_half_its_width()
    {
        Region ring = new(Named.Disc(10), [Named.Disc(4)]);
        Assert.Empty(Assert.Single(Offset.Of(ring, 4)).Holes);
        Assert.Empty(Offset.Of(ring, -3));
    }

    [Fact]
    public void A_sector_of_a_ring_grows_by_the_formulas_of_Steiner()
    {
        // Half a ring from 4 to 10: corners of a quarter turn, an inner arc that shrinks (closed form while byMm < 4).
        Outline sector = Outline.FromVertices([
            new Vertex(10, 0, 1),
            new Vertex(-10, 0),
            new Vertex(-4, 0, -1),
            new Vertex(4, 0),
        ]);
        Region grown = Assert.Single(Offset.Of(sector, 2));
        Near.Equal((42 * Math.PI) + (2 * (12 + (14 * Math.PI))) + (4 * Math.PI), grown.AreaMm2);
    }

    /// <summary>Found by random areas: a radius a hair over the distance leaves an arc smaller than what counts as one place.</summary>
    [Theory]
    [InlineData(9e-9)]
    [InlineData(1e-9)]
    [InlineData(0)]
    [InlineData(-1e-9)]
    [InlineData(-9e-9)]
    public void A_hollow_of_nearly_the_distance_closes(double overMm)
    {
        // A half circle hollow in a bar: the arcs about its corners meet in its centre (Steiner, less the hollow).
        Outline bar = Outline.FromVertices([
            new Vertex(-5, -5),
            new Vertex(5, -5),
            new Vertex(5, 0),
            new Vertex(1 + overMm, 0, -1),
            new Vertex(-1 - overMm, 0),
            new Vertex(-5, 0),
        ]);

        // Grown by 1: 12 by 7 with round corners, less what two quarter circles about the mouth's corners leave open.
        Near.Equal((12 * 7) - (4 - Math.PI) - (2 - (Math.PI / 2)), Assert.Single(Offset.Of(bar, 1)).AreaMm2, 1e-7);
    }

    /// <summary>Found by random areas: a shape shrunk to microns has arcs so small that a square corner looked like a cusp.</summary>
    [Fact]
    public void A_square_corner_of_a_tiny_arc_is_no_cusp()
    {
        const double tinyMm = 1e-6;
        Outline chip = Outline.FromVertices([
            new Vertex(-tinyMm, 0, Math.Tan(Math.PI / 8)),
            new Vertex(0, -tinyMm),
            new Vertex(0, 2e-3),
            new Vertex(-tinyMm, 2e-3),
        ]);
        Region grown = Assert.Single(Offset.Of(chip, 2));
        Near.Equal(chip.AreaMm2 + (2 * chip.PerimeterMm) + (4 * Math.PI), grown.AreaMm2);
    }

    [Fact]
    public void Regions_that_grow_into_one_another_become_one()
    {
        Region left = new(Named.Square(10));
        Region right = new(Named.Square(10).Transformed(new RigidMotion(default, new Vector(12, 0))));
        Assert.Equal(2, Offset.Of([left, right], 0.999).Length);
        Region one = Assert.Single(Offset.Of([left, right], 2));

        // 26 by 14 less what four rounded corners and the two cusps between the squares miss.
        double cusp = 2 * (2 - ((Math.Sqrt(3) + (4 * Math.Asin(0.5))) / 2));
        Near.Equal((26 * 14) - ((4 - Math.PI) * 4) - (2 * cusp), one.AreaMm2);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_distance_that_is_no_number_is_refused(double distanceMm)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Offset.Of(Named.Square(1), distanceMm));
        Assert.Throws<ArgumentOutOfRangeException>(() => Opening.Of(Named.Square(1), distanceMm));
        Assert.Throws<ArgumentOutOfRangeException>(() => Closing.Of(Named.Square(1), -1));
    }
}
