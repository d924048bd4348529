using System.Collections.Immutable;
using Flushback.Geometry.Chains;
using Flushback.Geometry.Crossings;

namespace Flushback.Geometry.Offsets;

/// <summary>Cuts curves wherever they cross, touch or begin to run together.</summary>
internal static class Cutting
{
    /// <summary>The pieces of all curves, in order.</summary>
    public static List<Piece> PiecesOf(
        ImmutableArray<Edge> curves,
        Nodes nodes,
        OffsetTolerances tolerances,
        CancellationToken cancellation
    )
    {
        List<double>[] cuts = CutsOf(curves, tolerances.TouchingMm, cancellation);
        List<Piece> pieces = [];
        for (int i = 0; i < curves.Length; i++)
        {
            AddPieces(i, curves[i], cuts[i], nodes, pieces);
        }

        // Which points are one is known only when all have been added.
        return
        [
            .. pieces
                .Select(piece => piece with { Start = nodes.NodeOf(piece.Start), End = nodes.NodeOf(piece.End) })
                .SelectMany(piece => piece.Start != piece.End ? [piece] : HalvesOf(piece, curves[piece.Curve], nodes))
                .Where(piece => piece.Start != piece.End),
        ];
    }

    /// <summary>A piece that ends where it began: no more than a point, or nearly a full circle.</summary>
    private static Piece[] HalvesOf(Piece piece, in Edge curve, Nodes nodes)
    {
        int middle = nodes.NodeOf(nodes.Add(curve.PointAt(piece.Middle)));
        return [piece with { To = piece.Middle, End = middle }, piece with { From = piece.Middle, Start = middle }];
    }

    /// <summary>For each curve the fractions at which it meets others, both ends among them, rising.</summary>
    private static List<double>[] CutsOf(ImmutableArray<Edge> curves, double touchingMm, CancellationToken cancellation)
    {
        List<double>[] cuts = [.. curves.Select(_ => new List<double> { 0, 1 })];
        new BoxPairs(new BoxTree(curves), touchingMm, Cut, cancellation).Run();
        foreach (List<double> fractions in cuts)
        {
            fractions.Sort();
        }

        return cuts;

        bool Cut(int a, int b)
        {
            Meetings meetings = Crossing.Between(curves[a], curves[b], touchingMm);
            for (int i = 0; i < meetings.Count; i++)
            {
                cuts[a].AddRange([meetings[i].OnFirst.From, meetings[i].OnFirst.To]);
                cuts[b].AddRange([meetings[i].OnSecond.From, meetings[i].OnSecond.To]);
            }

            return true;
        }
    }

    private static void AddPieces(int index, in Edge curve, List<double> cuts, Nodes nodes, List<Piece> pieces)
    {
        double from = cuts[0];
        int start = nodes.Add(curve.PointAt(from));
        foreach (double to in cuts)
        {
            if (to == from)
            {
                continue;
            }

            int end = nodes.Add(curve.PointAt(to));
            pieces.Add(new Piece(index, from, to, start, end));
            (from, start) = (to, end);
        }
    }
}
