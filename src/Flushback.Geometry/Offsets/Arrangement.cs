using System.Collections.Immutable;
using Flushback.Geometry.Distances;

namespace Flushback.Geometry.Offsets;

/// <summary>Areas from curves that hold every piece of their borders, and others too.</summary>
internal static class Arrangement
{
    /// <summary>The areas that lie on the left of the curves' kept pieces, the largest first.</summary>
    /// <param name="curves">Curves in the direction that has the area on its left; they may cross and touch freely.</param>
    /// <param name="test">Which pieces belong to a border.</param>
    /// <param name="tolerances">What counts as the same place.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <exception cref="InvalidOperationException">A piece of a border closes no loop, so the result would be wrong.</exception>
    public static ImmutableArray<Region> RegionsLeftOf(
        ImmutableArray<Edge> curves,
        IBorderTest test,
        OffsetTolerances tolerances,
        CancellationToken cancellation
    )
    {
        if (curves.IsEmpty)
        {
            return [];
        }

        Nodes nodes = new(tolerances.JoinMm);
        List<Piece> pieces = Cutting.PiecesOf(curves, nodes, tolerances, cancellation);
        pieces.RemoveAll(piece => !test.MayBeOnBorder(curves[piece.Curve].PointAt(piece.Middle)));
        RemoveThereAndBack(pieces, curves, tolerances.JoinMm);

        LoopTracer tracer = new(pieces, curves);
        ImmutableArray<Outline> loops = [.. tracer.Loops().Select(loop => LoopOutline.Of(loop, curves, nodes))];
        foreach (Piece dropped in tracer.Dropped)
        {
            RequireNoBorder(dropped, curves[dropped.Curve], loops, test, tolerances);
        }

        return Nesting.RegionsOf([.. loops.Where(loop => 2 * loop.AreaMm2 > tolerances.ThinMm * loop.PerimeterMm)]);
    }

    /// <summary>A piece may be dropped when it is none of a border for sure, or another one runs there too.</summary>
    private static void RequireNoBorder(
        Piece piece,
        in Edge curve,
        ImmutableArray<Outline> loops,
        IBorderTest test,
        OffsetTolerances tolerances
    )
    {
        double lengthMm = (piece.To - piece.From) * curve.LengthMm;
        Point middle = curve.PointAt(piece.Middle);
        if (
            lengthMm > tolerances.ThinMm
            && test.MustBeOnBorder(middle, curve.OutwardNormalAt(piece.Middle))
            && !loops.Any(loop => Distance.Between(middle, loop).DistanceMm <= tolerances.ThinMm)
        )
        {
            throw new InvalidOperationException($"The border near {middle} was not closed.");
        }
    }

    /// <summary>Takes out pairs of pieces that run along one another both ways: nothing lies between them.</summary>
    private static void RemoveThereAndBack(List<Piece> pieces, ImmutableArray<Edge> curves, double withinMm)
    {
        Dictionary<(int Start, int End), List<int>> open = [];
        bool[] isRemoved = new bool[pieces.Count];
        for (int i = 0; i < pieces.Count; i++)
        {
            Point middle = MiddleOf(pieces[i]);
            List<int> back = open.GetValueOrDefault((pieces[i].End, pieces[i].Start)) ?? [];
            int partner = back.FindIndex(other => MiddleOf(pieces[other]).IsWithin(withinMm, middle));
            if (partner >= 0)
            {
                isRemoved[i] = isRemoved[back[partner]] = true;
                back.RemoveAt(partner);
                continue;
            }

            if (!open.TryGetValue((pieces[i].Start, pieces[i].End), out List<int>? there))
            {
                open[(pieces[i].Start, pieces[i].End)] = there = [];
            }

            there.Add(i);
        }

        int index = 0;
        pieces.RemoveAll(_ => isRemoved[index++]);

        Point MiddleOf(Piece piece) => curves[piece.Curve].PointAt(piece.Middle);
    }
}
