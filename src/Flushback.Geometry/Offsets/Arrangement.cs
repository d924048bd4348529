using System.Collections.Immutable;

namespace Flushback.Geometry.Offsets;

/// <summary>Areas from curves that hold every piece of their borders, and others too.</summary>
internal static class Arrangement
{
    /// <summary>The areas that lie on the left of the curves' kept pieces, the largest first.</summary>
    /// <param name="curves">Curves in the direction that has the area on its left; they may cross and touch freely.</param>
    /// <param name="keeps">Whether the piece with this middle belongs to a border.</param>
    /// <param name="tolerances">What counts as the same place.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    public static ImmutableArray<Region> RegionsLeftOf(
        ImmutableArray<Edge> curves,
        Predicate<Point> keeps,
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
        pieces.RemoveAll(piece => !keeps(curves[piece.Curve].PointAt(piece.Middle)));
        RemoveThereAndBack(pieces, curves, tolerances.JoinMm);

        LoopTracer tracer = new(pieces, curves);
        IEnumerable<Outline> loops = tracer
            .Loops()
            .Select(loop => LoopOutline.Of(loop, curves, nodes))
            .Where(loop => 2 * loop.AreaMm2 > tolerances.ThinMm * loop.PerimeterMm);
        return Nesting.RegionsOf([.. loops]);
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
