using CsCheck;
using Flushback.Catalogue.Designs;
using Flushback.Cli.Regression.Baselines;
using Flushback.Geometry;
using NetTopologySuite.Algorithm.Distance;
using NetTopologySuite.Geometries;

namespace Flushback.Cli.Tests.Regression;

/// <summary>How far outlines lie apart: by properties that any distance of shapes has, and by closed forms.</summary>
public sealed class OutlineDriftTests
{
    private static readonly KeptPart[] _knives =
    [
        Kept(KnifeCatalogue.Wagtail.ToDrawn().Blade),
        Kept(KnifeCatalogue.Sandpiper.ToDrawn().Blade),
        Kept(KnifeCatalogue.Dunlin.ToDrawn().Blade),
        Kept(KnifeCatalogue.Sandpiper.ToDrawn().Spring),
    ];

    [Fact]
    public void An_outline_is_the_same_from_every_corner_in_both_directions_and_cut_into_more_edges()
    {
        Gen.Select(Gen.Int[0, 3].Select(i => _knives[i]), Gen.Int[0, 1000], Gen.Bool, Gen.Int[0, 1000])
            .Sample(
                (part, start, isReversed, split) =>
                {
                    List<KeptVertex> vertices = [.. part.Vertices];
                    Split(vertices, split % vertices.Count);
                    if (isReversed)
                    {
                        vertices = Reversed(vertices);
                    }

                    int first = start % vertices.Count;
                    KeptPart same = new(part.Name, [.. vertices[first..], .. vertices[..first]]);
                    return OutlineDrift.Between(part, same).Mm < 1e-9 && OutlineDrift.Between(same, part).Mm < 1e-9;
                },
                iter: 300
            );
    }

    [Fact]
    public void An_outline_that_is_shifted_is_off_by_no_more_than_the_shift()
    {
        Gen.Select(Gen.Int[0, 3].Select(i => _knives[i]), Gen.Double[0.002, 0.4], Gen.Double[0, Math.Tau])
            .Sample(
                (part, by, direction) =>
                {
                    double drift = OutlineDrift.Between(part, Shifted(part, by, direction, _ => true)).Mm;
                    return drift > 0.3 * by && drift <= by + 1e-9;
                },
                iter: 300
            );
    }

    // The referee: Hausdorff's distance of NetTopologySuite, between places along polygons that stand for the outlines.
    // Both look at places along the edges, not at the same ones, and a polygon lies inside its arcs: hence the allowance.
    [Fact]
    public void A_corner_that_is_moved_is_off_by_what_another_library_measures()
    {
        Gen.Select(
                Gen.Int[0, 3].Select(i => _knives[i]),
                Gen.Double[0.002, 0.4],
                Gen.Double[0, Math.Tau],
                Gen.Int[0, 1000]
            )
            .Sample(
                (part, by, direction, which) =>
                {
                    KeptPart moved = Shifted(part, by, direction, i => i == which % part.Vertices.Count);
                    double drift = OutlineDrift.Between(part, moved).Mm;
                    double referee = DiscreteHausdorffDistance.Distance(Ring(part), Ring(moved), 0.125);
                    return Math.Abs(drift - referee) <= (0.05 * by) + 0.001;
                },
                iter: 40
            );
    }

    [Fact]
    public void A_line_that_becomes_an_arc_is_off_by_its_sagitta()
    {
        // Half the chord times the bulge: the definition of a bulge, see the DXF reference on LWPOLYLINE.
        KeptPart square = Square(bulge: 0);
        KeptPart bowed = Square(bulge: 0.02);

        OutlineDrift drift = OutlineDrift.Between(square, bowed);

        Assert.Equal(0.02 * 10 / 2, drift.Mm, 1e-9);
        Assert.Equal(5, drift.X, 1e-9);
    }

    [Fact]
    public void An_arc_beyond_a_half_circle_is_measured_on_its_own_side()
    {
        // A circle of two arcs, of 90 and 270 degrees (bulges tan 22.5 and tan 67.5), and of two halves.
        double small = Math.Tan(Math.PI / 8);
        double large = Math.Tan(3 * Math.PI / 8);
        KeptPart quarters = new("blade", [new KeptVertex(1, 0, small), new KeptVertex(0, 1, large)]);
        KeptPart halves = new("blade", [new KeptVertex(1, 0, 1), new KeptVertex(-1, 0, 1)]);
        KeptPart wider = new("blade", [new KeptVertex(1.1, 0, 1), new KeptVertex(-1.1, 0, 1)]);

        Assert.Equal(0, OutlineDrift.Between(quarters, halves).Mm, 1e-12);
        Assert.Equal(0.1, OutlineDrift.Between(quarters, wider).Mm, 1e-12);
    }

    private static KeptPart Shifted(KeptPart part, double by, double direction, Func<int, bool> isMoved) =>
        new(
            part.Name,
            [
                .. part.Vertices.Select(
                    (at, i) =>
                        isMoved(i)
                            ? at with
                            {
                                X = at.X + (by * Math.Cos(direction)),
                                Y = at.Y + (by * Math.Sin(direction)),
                            }
                            : at
                ),
            ]
        );

    private static LinearRing Ring(KeptPart part)
    {
        const int Chords = 48;
        Outline outline = Outline.FromVertices([.. part.Vertices.Select(at => new Vertex(at.X, at.Y, at.Bulge))]);
        List<Coordinate> ring = [];
        foreach (Edge edge in outline.Edges)
        {
            int chords = edge.IsArc ? Chords : 1;
            for (int i = 0; i < chords; i++)
            {
                Flushback.Geometry.Point at = edge.PointAt((double)i / chords);
                ring.Add(new Coordinate(at.X, at.Y));
            }
        }

        ring.Add(ring[0].Copy());
        return new LinearRing([.. ring]);
    }

    private static KeptPart Square(double bulge) =>
        new(
            "blade",
            [new KeptVertex(0, 0, bulge), new KeptVertex(10, 0, 0), new KeptVertex(10, 10, 0), new KeptVertex(0, 10, 0)]
        );

    private static KeptPart Kept(Outline outline) =>
        new(
            "blade",
            [.. outline.Vertices.Select(vertex => new KeptVertex(vertex.Position.X, vertex.Position.Y, vertex.Bulge))]
        );

    private static void Split(List<KeptVertex> vertices, int i)
    {
        KeptVertex start = vertices[i];
        (double x, double y) = new KeptEdge(start, vertices[(i + 1) % vertices.Count]).At(0.5);

        // Half the angle: tan of an eighth of it, from tan of a quarter.
        double half = Math.Tan(Math.Atan(start.Bulge) / 2);
        vertices[i] = start with { Bulge = half };
        vertices.Insert(i + 1, new KeptVertex(x, y, half));
    }

    private static List<KeptVertex> Reversed(List<KeptVertex> vertices) =>
        [
            .. Enumerable
                .Range(0, vertices.Count)
                .Select(i => vertices.Count - 1 - i)
                .Select(i => vertices[i] with { Bulge = -vertices[(i - 1 + vertices.Count) % vertices.Count].Bulge }),
        ];
}
