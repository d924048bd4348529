using System.Collections.Immutable;
using CsCheck;
using Flushback.Geometry.Approximation;
using Flushback.Geometry.Checking;
using Flushback.Geometry.Distances;
using Flushback.Geometry.Tests.Shapes;
using NetTopologySuite.Operation.Valid;

namespace Flushback.Geometry.Tests.Checking;

/// <summary>Outlines that cross, touch or overlap themselves.</summary>
public class SelfMeetingTests
{
    /// <summary>Corners of polygons without near misses: no corner comes within a ten-thousandth of another edge.</summary>
    private static readonly Gen<Point[]> Corners = Gen.Select(
            Gen.Int[-50_000, 50_000],
            Gen.Int[-50_000, 50_000],
            (x, y) => new Point(x / 1000.0, y / 1000.0)
        )
        .Array[4, 9]
        .Where(HasNoNearMiss);

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
        Any.Motion.Sample(motion =>
        {
            Outline eight = Named.Polygon((0, 0), (10, 10), (10, 0), (0, 10)).Transformed(motion);
            OutlineFlaw flaw = Assert.Single(FlawsOf(eight));
            Assert.Equal(OutlineFlawKind.SelfCrossing, flaw.Kind);
            Near.Equal(motion.Apply(new Point(5, 5)), flaw.At);
        });

    [Fact]
    public void A_random_polygon_is_sound_when_polygon_software_finds_its_ring_simple() =>
        Corners.Sample(
            corners =>
            {
                Outline outline = Outline.FromVertices([.. corners.Select(p => new Vertex(p))]);
                bool isSimple = new IsSimpleOp(Polygons.Of(outline, [], 1e-3).ExteriorRing).IsSimple();
                Assert.Equal(isSimple, FlawsOf(outline).IsEmpty);
            },
            iter: 500
        );

    /// <summary>Every pair of edges that polygon software finds crossing is named, and no other.</summary>
    [Fact]
    public void A_random_polygon_crosses_itself_where_its_edges_do() =>
        Corners.Sample(
            corners =>
            {
                Outline outline = Outline.FromVertices([.. corners.Select(p => new Vertex(p))]);
                Assert.Equal(
                    CrossingPairs(corners),
                    FlawsOf(outline).Select(flaw => (flaw.VertexIndex, flaw.OtherVertexIndex ?? -1))
                );
            },
            iter: 500
        );

    private static OutlineFlaw Single(OutlineFlawKind kind, params (double X, double Y)[] corners)
    {
        OutlineFlaw flaw = Assert.Single(FlawsOf(Named.Polygon(corners)));
        Assert.Equal(kind, flaw.Kind);
        return flaw;
    }

    private static bool HasNoNearMiss(Point[] corners)
    {
        int count = corners.Length;
        for (int i = 0; i < count; i++)
        {
            for (int j = 1; j < count - 1; j++)
            {
                Edge other = new(corners[(i + j) % count], corners[(i + j + 1) % count]);
                if (Distance.Between(corners[i], other).DistanceMm < 1e-4)
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static IEnumerable<(int, int)> CrossingPairs(Point[] corners)
    {
        int count = corners.Length;
        NetTopologySuite.Geometries.Coordinate[] at =
        [
            .. corners.Select(p => new NetTopologySuite.Geometries.Coordinate(p.X, p.Y)),
        ];
        NetTopologySuite.Algorithm.RobustLineIntersector intersector = new();
        for (int i = 0; i < count; i++)
        {
            for (int j = i + 1; j < count; j++)
            {
                intersector.ComputeIntersection(at[i], at[(i + 1) % count], at[j], at[(j + 1) % count]);
                if (intersector.IsProper)
                {
                    yield return (i, j);
                }
            }
        }
    }

    private static ImmutableArray<OutlineFlaw> FlawsOf(Outline outline) => FlawsOf([.. outline.Vertices]);

    private static ImmutableArray<OutlineFlaw> FlawsOf(Vertex[] vertices) =>
        OutlineCheck.FlawsOf(vertices, GeometryTolerances.Default);
}
