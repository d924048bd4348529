using Flushback.Geometry.Checking;
using Flushback.Geometry.Distances;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Checking;

/// <summary>Drawings of 20,000 edges, of kinds that defeat a plain comparison of all pairs or of boxes alone.</summary>
public class LargeOutlineTests
{
    private const int Count = 20_000;

    /// <summary>All pairs would be ten thousand comparisons an edge.</summary>
    private const int ComparisonsPerEdge = 10;

    public static TheoryData<string> Kinds => ["round", "teeth", "diagonal comb"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_sound_one_is_checked_without_comparing_all_pairs(string kind)
    {
        Vertex[] vertices = Drawing(kind);
        Assert.Empty(OutlineCheck.FlawsOf(vertices, GeometryTolerances.Default));

        SelfMeetings search = new(Outline.FromVertices(vertices), 1e-6, CancellationToken.None);
        Assert.Empty(search.Run());
        Assert.InRange(search.Comparisons, Count - 1, ComparisonsPerEdge * Count);
    }

    [Fact]
    public void One_that_crosses_itself_everywhere_stops_at_the_most_flaws()
    {
        Vertex[] scribble =
        [
            .. Enumerable
                .Range(0, Count + 1)
                .Select(i => new Vertex(Point.Origin + (Vector.FromDirection(new Angle(i * 3.0)) * 50))),
        ];
        SelfMeetings search = new(Outline.FromVertices(scribble), 1e-6, CancellationToken.None);
        Assert.Equal(OutlineCheck.MostFlaws, search.Run().Length);
        Assert.InRange(search.Comparisons, OutlineCheck.MostFlaws, Count);
    }

    [Fact]
    public void A_check_that_is_no_longer_wanted_ends() =>
        Assert.Throws<OperationCanceledException>(() =>
            OutlineCheck.FlawsOf(Drawing("teeth"), GeometryTolerances.Default, new CancellationToken(true))
        );

    [Fact]
    public void Large_outlines_are_as_far_apart_as_worked_out()
    {
        Outline first = Outline.FromVertices(Drawing("round"));
        Outline second = Outline
            .FromVertices(Drawing("teeth"))
            .Transformed(new RigidMotion(Angle.Zero, new Vector(0, 130)));
        double sagitta = 100 * Math.Sin(Math.PI / Count) * 0.2 / 2;
        Near.Equal(70 - sagitta, Distance.Between(first, second).DistanceMm, 1e-5);
        Assert.True(first.Contains(Point.Origin));
    }

    private static Vertex[] Drawing(string kind) =>
        kind switch
        {
            "round" =>
            [
                .. Enumerable
                    .Range(0, Count)
                    .Select(i => new Vertex(
                        Point.Origin + (Vector.FromDirection(new Angle(Math.Tau * i / Count)) * 50),
                        0.2
                    )),
            ],
            "teeth" => Comb(new Vector(0, 1)),
            _ => Comb(new Vector(0.7, 1)),
        };

    /// <summary>A long comb: teeth a hundredth of a millimetre apart, each of two lines, slanted as asked.</summary>
    private static Vertex[] Comb(Vector tooth)
    {
        List<Vertex> vertices = [new Vertex(-1, -10), new Vertex(Count * 0.01, -10)];
        for (int i = Count - 3; i >= 0; i--)
        {
            Point root = new(i * 0.01, 0);
            vertices.Add(new Vertex(i % 2 == 0 ? root : root + (tooth * 40)));
        }

        return [.. vertices];
    }
}
