using CsCheck;
using Flushback.Catalogue.Designs;
using Flushback.Cli.Regression.Baselines;
using Flushback.Geometry;

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
        Gen.Select(Gen.OneOfConst(_knives), Gen.Int[0, 1000], Gen.Bool, Gen.Int[0, 1000])
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
    public void An_outline_that_is_shifted_is_off_by_no_more_and_a_corner_that_is_moved_is_found()
    {
        Gen.Select(Gen.OneOfConst(_knives), Gen.Double[0.002, 0.4], Gen.Double[0, Math.Tau], Gen.Int[0, 1000])
            .Sample(
                (part, by, direction, which) =>
                {
                    (double x, double y) = (by * Math.Cos(direction), by * Math.Sin(direction));
                    KeptPart shifted = new(
                        part.Name,
                        [.. part.Vertices.Select(at => at with { X = at.X + x, Y = at.Y + y })]
                    );
                    double whole = OutlineDrift.Between(part, shifted).Mm;

                    KeptVertex[] moved = [.. part.Vertices];
                    int i = which % moved.Length;
                    moved[i] = moved[i] with { X = moved[i].X + x, Y = moved[i].Y + y };
                    double one = OutlineDrift.Between(part, new KeptPart(part.Name, moved)).Mm;

                    // A corner moved along one of its own edges stays on the outline, and its other edge swings.
                    return whole > 0.3 * by && whole <= by + 1e-9 && one > 0.01 * by;
                },
                iter: 300
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
