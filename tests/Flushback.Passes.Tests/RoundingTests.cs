using CsCheck;
using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Passes.Tests;

/// <summary>Rounded corners: the exact round, the rolled disc, and what each takes off.</summary>
public sealed class RoundingTests
{
    private static readonly Site[] _corners =
    [
        PassCase.OpenCorner,
        PassCase.ClosedCorner,
        PassCase.Kick,
        PassCase.Shoulder,
        PassCase.NoseCorner,
    ];

    [Fact]
    public void A_round_reads_as_the_morphological_opening_of_its_corner_does() =>
        Gen.Select(KnifeGenerator.Designs, Gen.OneOf(_corners), Gen.Double[0.05, 0.8])
            .Sample(
                (design, corner, radius) =>
                {
                    PassCase before = new(design);
                    Outline outline = corner.Part == Part.Blade ? before.Knife.Blade : before.Knife.Spring;
                    if (before.Try(new RoundCorner(corner, radius)).Result is not { } round)
                    {
                        return;
                    }

                    (int first, int last) = Neighbours(before.Knife, round.Knife, corner);
                    if (first < 0 || CornerOpening.Of(outline, first, last, radius).Cut is not { } opened)
                    {
                        return;
                    }

                    Outline exact = corner.Part == Part.Blade ? round.Knife.Blade : round.Knife.Spring;
                    Assert.Equal(exact.AreaMm2, opened.Outline.AreaMm2, 1e-6);
                    Knife other = WithOutline(before.Knife, corner.Part, opened);
                    StopReadings one = StopCheck.Run(round.Knife, new BenchSettings()).Readings;
                    StopReadings two = StopCheck.Run(other, new BenchSettings()).Readings;
                    foreach ((StopReading a, StopReading b) in one.Stops.Zip(two.Stops))
                    {
                        Assert.Equal(0, before.Knife.LiftMm(a.SpringRotation, b.SpringRotation), 1e-5);
                    }
                },
                iter: 200
            );

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.4)]
    [InlineData(0.9)]
    public void A_round_between_two_straight_faces_takes_r_squared_times_tan_half_less_half_the_turn(double radiusMm)
    {
        // Circle in an angle, elementary geometry.
        PassCase before = new(KnifeCatalogue.Curlew);
        int corner = Enumerable
            .Range(1, before.Knife.BladeFaces.Length - 1)
            .Single(i =>
                before.Knife.BladeFaces[i - 1] == BladeFace.OpenFlat
                && before.Knife.BladeFaces[i] == BladeFace.HalfStopFace
            );
        Vector arriving = before.Knife.Blade.Edges[corner - 1].TangentAt(1);
        Vector leaving = before.Knife.Blade.Edges[corner].TangentAt(0);
        double turn = Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving));

        RemovedMetal removed = before.Try(new RoundCorner(PassCase.OpenCorner, radiusMm)).Result!.Removed;

        Assert.Equal(radiusMm * radiusMm * (Math.Tan(turn / 2) - (turn / 2)), removed.AreaMm2, 1e-12);
        Assert.Equal(removed.AreaMm2, Assert.Single(removed.Regions).AreaMm2, 1e-12);
    }

    [Fact]
    public void Rounding_in_two_goes_leaves_what_the_larger_radius_alone_leaves() =>
        Gen.Select(KnifeGenerator.Designs, Gen.OneOf(_corners), Gen.Double[0.02, 0.2], Gen.Double[0.25, 0.8])
            .Sample(
                (design, corner, small, large) =>
                {
                    PassCase before = new(design);
                    if (
                        before.Try(new RoundCorner(corner, small)).Result is { } first
                        && before.Try(new RoundCorner(corner, large)).Result is { } alone
                        && new PassCase(first.Knife).Try(new RoundCorner(corner, large)).Result is { } second
                    )
                    {
                        Assert.Equal(alone.Removed.AreaMm2, first.Removed.AreaMm2 + second.Removed.AreaMm2, 1e-7);
                    }
                },
                iter: 200
            );

    [Fact]
    public void A_corner_drawn_as_a_polygon_is_rounded_as_the_corner_it_stands_for()
    {
        // Two chamfers for a corner: a disc that spans them leaves one round, touching both faces.
        Knife sharp = KnifeCatalogue.Curlew.ToKnife();
        Knife chamfered = Chamfered(sharp, BladeFace.OpenFlat, BladeFace.HalfStopFace, BladeFace.OpenCorner);
        double whole = new PassCase(sharp).Try(new RoundCorner(PassCase.OpenCorner, 0.6)).Result!.Knife.Blade.AreaMm2;

        PassResult round = new PassCase(chamfered).Try(new RoundCorner(PassCase.OpenCorner, 0.6)).Result!;

        Assert.Equal(whole, round.Knife.Blade.AreaMm2, 1e-9);
        Assert.Single(round.Knife.BladeFaces, face => face == BladeFace.OpenCorner);
    }

    [Fact]
    public void A_round_smaller_than_the_one_there_is_refused_as_adding_metal()
    {
        PassCase knife = new(KnifeCatalogue.Sandpiper);

        PassProblem problem = knife.Try(new RoundCorner(PassCase.OpenCorner, 0.2)).Problem!;

        Assert.Equal(PassReasons.AddsMetal, problem.Reason);
        Assert.Contains("already has a radius of 0.300 mm", problem.Sentence, StringComparison.Ordinal);
    }

    /// <summary>The edges before and after the corner, told by what a round left.</summary>
    private static (int First, int Last) Neighbours(Knife before, Knife after, Site corner)
    {
        Outline old = corner.Part == Part.Blade ? before.Blade : before.Spring;
        Outline now = corner.Part == Part.Blade ? after.Blade : after.Spring;
        Edge[] made =
        [
            .. now.Edges.Where(edge =>
                OutlinePlace.Nearest(old, edge.PointAt(0.5)).On(old).DistanceTo(edge.PointAt(0.5)) > 1e-7
            ),
        ];
        if (made.Length != 1)
        {
            return (-1, -1);
        }

        OutlinePlace enters = OutlinePlace.Nearest(old, made[0].Start);
        OutlinePlace leaves = OutlinePlace.Nearest(old, made[0].End);
        bool inside = enters.Fraction is > 0.001 and < 0.999 && leaves.Fraction is > 0.001 and < 0.999;
        return inside && enters.EdgeIndex != leaves.EdgeIndex ? (enters.EdgeIndex, leaves.EdgeIndex) : (-1, -1);
    }

    private static Knife WithOutline(Knife knife, Part part, CutOutline cut) =>
        part == Part.Blade
            ? knife with
            {
                Blade = cut.Outline,
                BladeFaces = [.. cut.Sources.Select(i => i < 0 ? BladeFace.Unknown : knife.BladeFaces[i])],
            }
            : knife with
            {
                Spring = cut.Outline,
                SpringFaces = [.. cut.Sources.Select(i => i < 0 ? SpringFace.Unknown : knife.SpringFaces[i])],
            };

    /// <summary>The knife with a sharp corner of its blade cut off twice, 0.05 mm inside a round of 0.6 mm.</summary>
    private static Knife Chamfered(Knife knife, BladeFace before, BladeFace after, BladeFace corner)
    {
        int at = Enumerable
            .Range(1, knife.BladeFaces.Length - 1)
            .Single(i => knife.BladeFaces[i - 1] == before && knife.BladeFaces[i] == after);
        Vertex[] vertices = [.. knife.Blade.Vertices];
        Point sharp = vertices[at].Position;
        Vector back = -knife.Blade.Edges[at - 1].TangentAt(1);
        Vector on = knife.Blade.Edges[at].TangentAt(0);
        Vertex[] cut =
        [
            .. vertices[..at],
            new Vertex(sharp + (back * 0.15)),
            new Vertex(sharp + ((back + on) * 0.06)),
            new Vertex(sharp + (on * 0.15)),
            .. vertices[(at + 1)..],
        ];
        return knife with
        {
            Blade = Outline.FromVertices(cut),
            BladeFaces = [.. knife.BladeFaces[..at], corner, corner, .. knife.BladeFaces[at..]],
        };
    }
}
