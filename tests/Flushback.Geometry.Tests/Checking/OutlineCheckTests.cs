using System.Collections.Immutable;
using CsCheck;
using Flushback.Geometry.Checking;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Checking;

public class OutlineCheckTests
{
    [Fact]
    public void A_sound_outline_has_no_flaws_however_it_is_drawn() =>
        Gen.Select(Any.Outline, Any.Motion, Gen.Int[0, 13], Gen.Double[0.1, 0.9])
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

    [Theory]
    [InlineData(1e6)]
    [InlineData(-1e200)]
    [InlineData(double.MaxValue)]
    public void An_arc_too_high_to_lie_within_the_limit_is_named_with_its_vertex(double bulge) =>
        AssertOnly(
            OutlineFlawKind.CoordinateOutOfRange,
            0,
            new Vertex(0, 0, bulge),
            new Vertex(9, 0),
            new Vertex(0, 9)
        );

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
    public void A_sliver_thinner_than_any_foil_has_no_area() =>
        AssertOnly(OutlineFlawKind.ZeroArea, 0, new Vertex(0, 0), new Vertex(100, 0), new Vertex(50, 5e-5));

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

    private static void AssertOnly(OutlineFlawKind kind, int vertex, params Vertex[] vertices)
    {
        OutlineFlaw flaw = Assert.Single(FlawsOf(vertices));
        Assert.Equal((kind, vertex), (flaw.Kind, flaw.VertexIndex));
    }

    private static ImmutableArray<OutlineFlaw> FlawsOf(Outline outline) => FlawsOf([.. outline.Vertices]);

    private static ImmutableArray<OutlineFlaw> FlawsOf(Vertex[] vertices) =>
        OutlineCheck.FlawsOf(vertices, GeometryTolerances.Default);
}
