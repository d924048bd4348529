using System.Collections.Immutable;
using CsCheck;
using Flushback.Geometry.Checking;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Checking;

public class OutlineCheckTests
{
    [Fact]
    public void A_sound_outline_has_no_flaws_however_it_is_drawn() =>
        Gen.Select(Shapes.Random.Outline, Shapes.Random.Motion, Gen.Int[0, 13], Gen.Double[0.1, 0.9])
            .Sample(
                (outline, motion, index, fraction) =>
                {
                    Assert.Empty(FlawsOf(outline.Transformed(motion)));
                    Assert.Empty(FlawsOf(outline.Reversed()));
                    Assert.Empty(FlawsOf(outline.StartingAt(index)));
                    Assert.Empty(FlawsOf(outline.WithEdgeSplit(index, fraction)));
                }
            );

    [Fact]
    public void Known_shapes_are_sound()
    {
        Assert.All(
            [Named.Square(10), Named.Disc(5), Named.Hexagon(4), Named.Slot(20, 3)],
            outline => Assert.Empty(FlawsOf(outline))
        );
    }

    [Fact]
    public void Nothing_and_one_vertex_and_two_lines_are_too_few()
    {
        AssertOnly(OutlineFlawKind.TooFewVertices, 0);
        AssertOnly(OutlineFlawKind.TooFewVertices, 0, new Vertex(1, 2));
        AssertOnly(OutlineFlawKind.TooFewVertices, 0, new Vertex(1, 2), new Vertex(5, 2));
    }

    [Theory]
    [InlineData(double.NaN, 0, 0)]
    [InlineData(0, double.PositiveInfinity, 0)]
    [InlineData(0, 0, double.NaN)]
    [InlineData(0, 0, double.NegativeInfinity)]
    public void A_number_that_is_not_finite_is_named_with_its_vertex(double x, double y, double bulge) =>
        AssertOnly(
            OutlineFlawKind.NotFinite,
            2,
            new Vertex(0, 0),
            new Vertex(9, 0),
            new Vertex(x, y, bulge),
            new Vertex(0, 9)
        );

    [Fact]
    public void Two_equal_vertices_are_a_line_without_length() =>
        AssertOnly(
            OutlineFlawKind.ZeroLengthEdge,
            1,
            new Vertex(0, 0),
            new Vertex(9, 0),
            new Vertex(9, 0),
            new Vertex(0, 9)
        );

    [Fact]
    public void A_last_vertex_equal_to_the_first_is_a_line_without_length() =>
        AssertOnly(
            OutlineFlawKind.ZeroLengthEdge,
            3,
            new Vertex(0, 0),
            new Vertex(9, 0),
            new Vertex(0, 9),
            new Vertex(0, 0)
        );

    [Fact]
    public void A_bulge_between_equal_points_has_no_circle() =>
        AssertOnly(
            OutlineFlawKind.BulgeBetweenEqualPoints,
            1,
            new Vertex(0, 0),
            new Vertex(9, 0, 0.5),
            new Vertex(9, 0),
            new Vertex(0, 9)
        );

    [Fact]
    public void A_coordinate_beyond_the_limit_is_named_with_its_vertex() =>
        AssertOnly(OutlineFlawKind.CoordinateOutOfRange, 1, new Vertex(0, 0), new Vertex(1e9, 0), new Vertex(0, 9));

    [Fact]
    public void All_bad_vertices_are_named_not_the_first_alone()
    {
        ImmutableArray<OutlineFlaw> flaws = FlawsOf([
            new Vertex(0, 0),
            new Vertex(0, 0),
            new Vertex(1e9, 0),
            new Vertex(double.NaN, 0),
        ]);
        Assert.Equal([0, 2, 3], flaws.Select(flaw => flaw.VertexIndex));
    }

    [Fact]
    public void A_figure_of_eight_crosses_itself_at_its_middle()
    {
        OutlineFlaw flaw = Single(OutlineFlawKind.SelfCrossing, (0, 0), (10, 10), (10, 0), (0, 10));
        Near.Equal(new Point(5, 5), flaw.At);
        Assert.Equal((0, 2), (flaw.VertexIndex, flaw.OtherVertexIndex));
    }

    [Fact]
    public void An_arc_that_bends_through_the_far_side_crosses_it_twice()
    {
        ImmutableArray<OutlineFlaw> flaws = FlawsOf([
            new Vertex(0, 0, -1),
            new Vertex(10, 0),
            new Vertex(10, 4),
            new Vertex(0, 4),
        ]);
        Assert.All(flaws, flaw => Assert.Equal(OutlineFlawKind.SelfCrossing, flaw.Kind));
        Assert.Equal([2.0, 8.0], flaws.Select(flaw => Math.Round(flaw.At.X, 9)).Order());
    }

    [Fact]
    public void An_arc_that_grazes_the_far_side_touches_it()
    {
        ImmutableArray<OutlineFlaw> flaws = FlawsOf([
            new Vertex(0, 0, -1),
            new Vertex(10, 0),
            new Vertex(10, 5),
            new Vertex(0, 5),
        ]);
        OutlineFlaw flaw = Assert.Single(flaws);
        Assert.Equal(OutlineFlawKind.SelfTouching, flaw.Kind);
        Near.Equal(new Point(5, 5), flaw.At);
    }

    [Fact]
    public void A_corner_that_touches_a_side_is_named_once()
    {
        OutlineFlaw flaw = Single(OutlineFlawKind.SelfTouching, (0, 0), (10, 0), (10, 10), (5, 0), (0, 10));
        Assert.Equal(new Point(5, 0), flaw.At);
    }

    [Fact]
    public void A_spike_of_no_width_overlaps_itself()
    {
        Outline spiked = Named.Polygon((0, 0), (10, 0), (10, 5), (20, 5), (10, 5.0000000001), (10, 10), (0, 10));
        OutlineFlaw flaw = Assert.Single(FlawsOf(spiked), flaw => flaw.Kind == OutlineFlawKind.SelfOverlapping);
        Assert.Equal((2, 3), (flaw.VertexIndex, flaw.OtherVertexIndex));
        Near.Equal(new Point(15, 5), flaw.At);
    }

    [Fact]
    public void An_arc_drawn_there_and_back_overlaps_itself()
    {
        ImmutableArray<OutlineFlaw> flaws = FlawsOf([new Vertex(0, 0, 1), new Vertex(10, 0, -1)]);
        Assert.Equal(OutlineFlawKind.SelfOverlapping, Assert.Single(flaws).Kind);
    }

    [Fact]
    public void A_sliver_thinner_than_any_foil_has_no_area() =>
        AssertOnly(OutlineFlawKind.ZeroArea, 0, new Vertex(0, 0), new Vertex(100, 0), new Vertex(50, 5e-5));

    [Fact]
    public void A_cusp_is_a_joint_and_no_touch()
    {
        // The arc leaves the line's end straight back along it and rises slowly.
        ImmutableArray<OutlineFlaw> flaws = FlawsOf([
            new Vertex(0, 0),
            new Vertex(10, 0, -Math.Tan(Math.PI / 16)),
            new Vertex(10 - (20 * Math.Sin(Math.PI / 4)), 20 * (1 - Math.Cos(Math.PI / 4))),
        ]);
        Assert.Empty(flaws);
    }

    [Fact]
    public void An_arc_of_nearly_a_full_turn_crosses_both_its_neighbours_away_from_their_common_vertices()
    {
        ImmutableArray<OutlineFlaw> flaws = FlawsOf([
            new Vertex(-5, 0),
            new Vertex(10, 0, -20),
            new Vertex(10, 1),
            new Vertex(-5, 1),
        ]);
        Assert.All(flaws, flaw => Assert.Equal(OutlineFlawKind.SelfCrossing, flaw.Kind));
        Assert.Equal([(0, 1), (1, 2)], flaws.Select(flaw => (flaw.VertexIndex, flaw.OtherVertexIndex ?? -1)));
    }

    [Fact]
    public void Flaws_are_found_again_when_the_drawing_is_moved() =>
        Shapes.Random.Motion.Sample(motion =>
        {
            Outline eight = Named.Polygon((0, 0), (10, 10), (10, 0), (0, 10)).Transformed(motion);
            OutlineFlaw flaw = Assert.Single(FlawsOf(eight));
            Assert.Equal(OutlineFlawKind.SelfCrossing, flaw.Kind);
            Near.Equal(motion.Apply(new Point(5, 5)), flaw.At);
        });

    [Fact]
    public void A_sound_drawing_gives_its_outline_and_an_unsound_one_none()
    {
        Assert.True(
            OutlineCheck.TryOutline(
                Named.Square(4).Vertices.AsSpan(),
                GeometryTolerances.Default,
                out Outline? outline,
                out _
            )
        );
        Assert.Equal(16, outline.AreaMm2);
        Assert.False(
            OutlineCheck.TryOutline([], GeometryTolerances.Default, out outline, out ImmutableArray<OutlineFlaw> flaws)
        );
        Assert.Null(outline);
        Assert.Single(flaws);
    }

    private static OutlineFlaw Single(OutlineFlawKind kind, params (double X, double Y)[] corners)
    {
        OutlineFlaw flaw = Assert.Single(FlawsOf(Named.Polygon(corners)));
        Assert.Equal(kind, flaw.Kind);
        return flaw;
    }

    private static void AssertOnly(OutlineFlawKind kind, int vertex, params Vertex[] vertices)
    {
        OutlineFlaw flaw = Assert.Single(FlawsOf(vertices));
        Assert.Equal((kind, vertex), (flaw.Kind, flaw.VertexIndex));
    }

    private static ImmutableArray<OutlineFlaw> FlawsOf(Outline outline) => FlawsOf([.. outline.Vertices]);

    private static ImmutableArray<OutlineFlaw> FlawsOf(Vertex[] vertices) =>
        OutlineCheck.FlawsOf(vertices, GeometryTolerances.Default);
}
