using System.Collections.Immutable;
using Flushback.Dxf.Refitting;
using Flushback.Geometry;

namespace Flushback.Inspection.Repair;

/// <summary>Puts arcs in the place of short lines that stand for them.</summary>
internal static class ArcsFromLines
{
    /// <summary>A chain in pieces, each run of lines that is an arc as one piece.</summary>
    /// <param name="edges">The chain.</param>
    /// <param name="refits">The runs that were found, along the chain; none a whole circle.</param>
    public static List<Piece> Pieces(ImmutableArray<Edge> edges, ImmutableArray<Refit> refits)
    {
        // Begin where no run lies across the beginning.
        int start = refits.IsEmpty ? 0 : refits[0].FirstEdge;
        Dictionary<int, Refit> byFirst = refits.ToDictionary(refit => refit.FirstEdge);
        List<Piece> pieces = [];
        for (int i = start; i < start + edges.Length; )
        {
            int edge = i % edges.Length;
            if (byFirst.TryGetValue(edge, out Refit? refit))
            {
                pieces.Add(new Piece(ArcOf(refit), i, refit.EdgeCount));
                i += refit.EdgeCount;
            }
            else
            {
                pieces.Add(new Piece([edges[edge]], i, 1));
                i++;
            }
        }

        return pieces;
    }

    private static ImmutableArray<Edge> ArcOf(Refit refit)
    {
        Edge arc = Edge.Arc(refit.From, refit.To, refit.Sweep);
        if (Math.Abs(arc.Sweep.Radians) <= Math.PI)
        {
            return [arc];
        }

        // Beyond a half turn a bulge loses digits.
        Edge first = arc.Part(0, 0.5);
        Edge second = arc.Part(0.5, 1);
        return [first, second with { Start = first.End }];
    }
}
