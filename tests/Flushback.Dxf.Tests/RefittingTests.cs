using CsCheck;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Refitting;
using Flushback.Geometry;
using Flushback.Geometry.Distances;

namespace Flushback.Dxf.Tests;

/// <summary>Arcs that were cut into short edges come back; what was meant as a polygon stays one.</summary>
public sealed class RefittingTests
{
    private static readonly RefitTolerances Tolerances = RefitTolerances.Default;

    /// <summary>Sagitta of a side of a regular polygon, r (1 - cos(pi / n)) (elementary geometry).</summary>
    private static double Sagitta(double radius, int sides) => radius * (1 - Math.Cos(Math.PI / sides));

    [Theory]
    [InlineData(1.1, 24)] // Sagitta 0.0094 mm.
    [InlineData(0.5, 16)] // 0.0096 mm.
    [InlineData(1.5875, 32)] // A hole for a pin of 1/8 in: 0.0076 mm.
    [InlineData(25, 360)]
    public void A_polygon_that_no_cutter_could_tell_from_a_circle_becomes_one(double radius, int sides)
    {
        RefittedShape refitted = ArcRefitting.Of(Polygon(new(3, -7), radius, sides), Tolerances);
        Circle circle = Assert.IsType<FullCircle>(refitted.Geometry).Circle;
        Refit refit = Assert.Single(refitted.Refits);

        Assert.Equal(3, circle.Centre.X, 1e-9);
        Assert.Equal(-7, circle.Centre.Y, 1e-9);
        Assert.Equal(radius, circle.RadiusMm, 1e-9);
        Assert.Equal(circle, refit.Circle);
        Assert.Equal(sides, refit.EdgeCount);
        Assert.Equal(Math.Tau, refit.Sweep.Radians);
        Assert.Equal(Sagitta(radius, sides), refit.DeviationMm, 1e-9);
    }

    [Theory]
    [InlineData(3, 24)] // Sagitta 0.026 mm.
    [InlineData(5, 6)]
    [InlineData(0.05, 6)] // Sagittas below the tolerance, and yet too few sides to be anything but meant.
    [InlineData(0.1, 8)]
    [InlineData(0.2, 12)]
    public void A_polygon_that_can_be_told_from_a_circle_stays_to_the_last_bit(double radius, int sides)
    {
        Outline polygon = Polygon(new(3, -7), radius, sides);
        RefittedShape refitted = ArcRefitting.Of(polygon, Tolerances);
        Assert.Empty(refitted.Refits);
        Assert.Same(polygon, Assert.IsType<ClosedOutline>(refitted.Geometry).Outline);
    }

    [Fact]
    public void A_wider_chord_tolerance_takes_coarser_polygons()
    {
        Outline polygon = Polygon(new(0, 0), 3, 24);
        RefittedShape refitted = ArcRefitting.Of(polygon, Tolerances with { ChordMm = 0.03 });
        Assert.Equal(3, Assert.IsType<FullCircle>(refitted.Geometry).Circle.RadiusMm, 1e-9);
    }

    [Fact]
    public void Circles_written_to_a_micrometre_come_back() =>
        Gen.Select(
                Gen.Double[-200, 200],
                Gen.Double[-200, 200],
                Gen.Double[0.2, 40],
                Gen.Int[0, 60],
                Gen.Double[0, 6.3],
                Gen.Bool
            )
            .Sample(
                (x, y, radius, more, turn, isReversed) =>
                {
                    int sides = SidesFor(radius) + more;
                    Outline polygon = Rounded(Polygon(new(x, y), radius, sides, turn));
                    RefittedShape refitted = ArcRefitting.Of(isReversed ? polygon.Reversed() : polygon, Tolerances);
                    Circle circle = Assert.IsType<FullCircle>(refitted.Geometry).Circle;
                    Assert.True(circle.Centre.IsWithin(0.001, new(x, y)), $"{circle}");
                    Assert.Equal(radius, circle.RadiusMm, 0.001);
                    Assert.Equal(isReversed, Assert.Single(refitted.Refits).Sweep.Radians < 0);
                }
            );

    [Fact]
    public void The_round_ends_of_a_slot_come_back_and_its_sides_stay()
    {
        Outline slot = Outline.FromVertices([new(0, 0), new(30, 0, 1), new(30, 10), new(0, 10, 1)]);
        Outline cut = Cut(slot, 0.005);
        RefittedShape refitted = ArcRefitting.Of(cut, Tolerances);
        Edge[] edges = [.. Assert.IsType<ClosedOutline>(refitted.Geometry).Outline.Edges];

        Assert.Equal(2, refitted.Refits.Length);
        Assert.Equal(4, edges.Length);
        Assert.All(edges.Where(edge => edge.IsArc), arc => Assert.Equal(5, arc.RadiusMm, 1e-9));
        Assert.Equal(
            [(new Point(0, 0), new Point(30, 0)), (new Point(30, 10), new Point(0, 10))],
            edges.Where(edge => !edge.IsArc).Select(edge => (edge.Start, edge.End)).OrderBy(ends => ends.Start.Y)
        );
        Assert.All(refitted.Refits, refit => Assert.Equal(Math.PI, refit.Sweep.Radians, 1e-9));
        Refit first = refitted.Refits[0];
        Assert.Equal(first.From, cut.Edges[first.FirstEdge].Start);
        Assert.Equal(first.To, cut.Edges[(first.FirstEdge + first.EdgeCount - 1) % cut.Edges.Length].End);
    }

    [Fact]
    public void An_arc_of_three_hundred_degrees_comes_back_as_two_of_one_circle()
    {
        // A keyhole: an arc of 300 degrees about the origin, and a slot with square corners.
        double half = Math.PI / 6;
        Point from = new(4 * Math.Sin(half), -4 * Math.Cos(half));
        Point to = new(-from.X, from.Y);
        Outline keyhole = Outline.FromVertices([
            new(from, Math.Tan(300 * Math.PI / 180 / 4)),
            new(to),
            new(to.X, -9),
            new(from.X, -9),
        ]);
        RefittedShape refitted = ArcRefitting.Of(Cut(keyhole, 0.004), Tolerances);
        Outline outline = Assert.IsType<ClosedOutline>(refitted.Geometry).Outline;
        Assert.Equal(300, Assert.Single(refitted.Refits).Sweep.Degrees, 1e-9);
        Assert.Equal(5, outline.Edges.Length);
        Assert.All(outline.Edges.Where(edge => edge.IsArc), arc => Assert.Equal(4, arc.RadiusMm, 1e-9));
        Assert.Equal(keyhole.AreaMm2, outline.AreaMm2, 1e-8);
    }

    [Fact]
    public void A_hole_drawn_as_short_arcs_that_are_nearly_one_circle_becomes_it()
    {
        // Sixteen arcs of 1.6 mm whose ends lie up to half a micrometre off.
        Vertex[] vertices =
        [
            .. Enumerable
                .Range(0, 16)
                .Select(i =>
                {
                    Vector direction = Vector.FromDirection(new Angle(Math.Tau * i / 16));
                    double off = i % 2 == 0 ? 0.0005 : -0.0005;
                    return new Vertex(Point.Origin + (direction * (1.6 + off)), Math.Tan(Math.PI / 32));
                }),
        ];
        RefittedShape refitted = ArcRefitting.Of(Outline.FromVertices(vertices), Tolerances);
        Assert.Equal(1.6, Assert.IsType<FullCircle>(refitted.Geometry).Circle.RadiusMm, 1e-6);
    }

    [Fact]
    public void A_dent_in_a_circle_stays()
    {
        Vertex[] vertices = [.. Polygon(new(0, 0), 2, 60).Vertices];
        vertices[20] = new Vertex(Point.Origin + ((vertices[20].Position - Point.Origin) * 0.99));
        RefittedShape refitted = ArcRefitting.Of(Outline.FromVertices(vertices), Tolerances);
        Outline outline = Assert.IsType<ClosedOutline>(refitted.Geometry).Outline;
        Assert.Equal(58, Assert.Single(refitted.Refits).EdgeCount);
        Assert.Contains(outline.Vertices, vertex => vertex.Position == vertices[20].Position);
    }

    [Fact]
    public void A_straight_side_in_many_pieces_is_no_arc()
    {
        List<Vertex> vertices = [];
        for (int i = 0; i < 100; i++)
        {
            vertices.Add(new Vertex(0.37 * i, Math.Round(0.5 * Math.Sin(i)) / 1000));
        }

        vertices.Add(new Vertex(18, 20));
        Outline outline = Outline.FromVertices([.. vertices]);
        Assert.Same(outline, Assert.IsType<ClosedOutline>(ArcRefitting.Of(outline, Tolerances).Geometry).Outline);
    }

    [Fact]
    public void Polygons_with_plain_corners_stay() =>
        Gen.Select(Gen.Double[0.3, 50], Gen.Double[0.05, 0.95].Array[3, 13])
            .Sample(
                (radius, parts) =>
                {
                    Outline polygon = Outline.FromVertices([
                        .. parts.Select(
                            (part, i) =>
                                new Vertex(
                                    Point.Origin
                                        + (
                                            Vector.FromDirection(new Angle(Math.Tau * (i + (part / 8)) / parts.Length))
                                            * radius
                                        )
                                )
                        ),
                    ]);
                    Assert.Empty(ArcRefitting.Of(polygon, Tolerances).Refits);
                }
            );

    [Fact]
    public void Any_outline_cut_to_short_edges_comes_back_with_as_many_edges_from_any_start_and_either_way() =>
        Gen.Select(Shapes, Gen.Double[0.0005, 0.005], Gen.Int[0, 10_000], Gen.Bool, Gen.Bool)
            .Sample(
                (outline, sagitta, start, isReversed, isRounded) =>
                {
                    Outline cut = Cut(outline, sagitta);
                    cut = isRounded ? Rounded(cut) : cut;
                    Vertex[] vertices = [.. (isReversed ? cut.Reversed() : cut).Vertices];
                    start %= vertices.Length;
                    cut = Outline.FromVertices([.. vertices[start..], .. vertices[..start]]);
                    RefittedShape refitted = ArcRefitting.Of(cut, Tolerances);
                    Outline found = Assert.IsType<ClosedOutline>(refitted.Geometry).Outline;

                    Assert.Equal(outline.Edges.Length, found.Edges.Length);
                    Assert.Equal(outline.Edges.Count(edge => edge.IsArc), refitted.Refits.Length);
                    double farthest = Math.Max(Farthest(found, outline), Farthest(outline, found));
                    Assert.InRange(farthest, 0, isRounded ? 2 * Tolerances.VertexMm : 1e-6);
                    Assert.All(refitted.Refits, refit => Assert.InRange(refit.DeviationMm, 0, Tolerances.ChordMm));
                }
            );

    [Fact]
    public void An_open_chain_keeps_its_ends()
    {
        Edge arc = new(new(0, 0), new(10, 0), 0.8);
        Edge[] pieces = [new Edge(new(-5, 1), new(0, 0)), .. Pieces(arc, 0.005), new Edge(new(10, 0), new(20, 3))];
        RefittedShape refitted = ArcRefitting.Of([.. pieces], Tolerances);
        Edge[] edges = [.. Assert.IsType<OpenChain>(refitted.Geometry).Edges];
        Assert.Equal([pieces[0], edges[1], pieces[^1]], edges);
        Assert.Equal(arc.Start, edges[1].Start);
        Assert.Equal(arc.End, edges[1].End);
        Assert.Equal(arc.Bulge, edges[1].Bulge, 1e-9);
        Assert.Equal(1, Assert.Single(refitted.Refits).FirstEdge);
    }

    [Fact]
    public void A_hundred_thousand_edges_take_no_more_than_seconds()
    {
        // Waves of large arcs, each in a thousand edges, and a long side in many pieces.
        List<Edge> edges = [];
        for (int i = 0; i < 50; i++)
        {
            edges.AddRange(Parts(new Edge(new(20 * i, 0), new(20 * (i + 1), 0), i % 2 == 0 ? 0.5 : -0.5), 1000));
        }

        edges.AddRange(Parts(new Edge(new(1000, 0), new(1000, 500)), 50_000));
        edges.Add(new Edge(new(1000, 500), new(0, 0)));
        Outline outline = Outline.FromVertices([.. edges.Select(edge => new Vertex(edge.Start, edge.Bulge))]);
        ProcessorTime clock = ProcessorTime.OfThisThread();
        RefittedShape refitted = ArcRefitting.Of(outline, Tolerances);
        Assert.Equal(50, refitted.Refits.Length);
        Assert.InRange(clock.Spent, TimeSpan.Zero, TimeSpan.FromSeconds(20));
    }

    /// <summary>Star-shaped outlines whose edges meet at plain corners; every arc bends enough to be one.</summary>
    private static readonly Gen<Outline> Shapes = Gen.Select(
            Gen.Double[-100, 100],
            Gen.Double[-100, 100],
            Gen.Select(Gen.Double[10, 40], Gen.Double[0.3, 0.7], Gen.Double[0.1, 0.3], Gen.Int[0, 2]).Array[3, 7]
        )
        .Select(
            (x, y, corners) =>
                Outline.FromVertices([
                    .. corners.Select(
                        (corner, i) =>
                        {
                            (double radius, double part, double bulge, int kind) = corner;
                            Vector direction = Vector.FromDirection(new Angle(Math.Tau * (i + part) / corners.Length));
                            return new Vertex(new Point(x, y) + (direction * radius), (kind - 1) * bulge);
                        }
                    ),
                ])
        )
        .Where(HasPlainCorners);

    private static bool HasPlainCorners(Outline outline)
    {
        for (int i = 0; i < outline.Edges.Length; i++)
        {
            Vector from = outline.Edges[i].TangentAt(1);
            Vector to = outline.Edges[(i + 1) % outline.Edges.Length].TangentAt(0);
            if (Math.Abs(Math.Atan2(from.Cross(to), from.Dot(to))) < 0.4)
            {
                return false;
            }
        }

        return true;
    }

    private static Outline Polygon(Point centre, double radius, int sides, double turn = 0) =>
        Outline.FromVertices([
            .. Enumerable
                .Range(0, sides)
                .Select(i => new Vertex(
                    centre + (Vector.FromDirection(new Angle((Math.Tau * i / sides) + turn)) * radius)
                )),
        ]);

    // As many sides as keep the sagitta below the tolerance, and sixteen at least.
    private static int SidesFor(double radius) =>
        Math.Max(17, (int)Math.Ceiling(Math.PI / Math.Acos(1 - (0.8 * Tolerances.ChordMm / radius))));

    private static Outline Cut(Outline outline, double sagitta) =>
        Outline.FromVertices([
            .. outline.Edges.SelectMany(edge => Pieces(edge, sagitta)).Select(edge => new Vertex(edge.Start)),
        ]);

    private static IEnumerable<Edge> Pieces(Edge edge, double sagitta)
    {
        if (!edge.IsArc)
        {
            return [edge];
        }

        double step = Math.Min(0.3, 2 * Math.Acos(1 - (sagitta / edge.RadiusMm)));
        return Parts(edge, Math.Max(4, (int)Math.Ceiling(Math.Abs(edge.Sweep.Radians) / step)));
    }

    private static IEnumerable<Edge> Parts(Edge edge, int count) =>
        Enumerable
            .Range(0, count)
            .Select(i => new Edge(
                edge.PointAt((double)i / count),
                i + 1 == count ? edge.End : edge.PointAt((double)(i + 1) / count)
            ));

    private static Outline Rounded(Outline outline) =>
        Outline.FromVertices([
            .. outline.Vertices.Select(vertex => new Vertex(
                Math.Round(vertex.Position.X, 3),
                Math.Round(vertex.Position.Y, 3),
                vertex.Bulge
            )),
        ]);

    private static double Farthest(Outline from, Outline to) =>
        from
            .Edges.SelectMany(edge => Enumerable.Range(0, 16).Select(i => edge.PointAt(i / 16.0)))
            .Max(p => Distance.Between(p, to).DistanceMm);
}
