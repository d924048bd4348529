namespace Flushback.Geometry.Removal;

/// <summary>Builds the outline that is left, edge by edge.</summary>
internal sealed class ChainEdit
{
    // Shorter than this an edge is rounding, not shape: a little above what an outline's check takes for none.
    private const double NoLengthMm = 1.5e-6;

    private readonly List<(Edge Edge, int Source)> _edges = [];

    /// <summary>Adds an edge; one without length is left out, and its ends become one.</summary>
    public void Add(Edge edge, int source)
    {
        if (!edge.IsArc && edge.Start.IsWithin(NoLengthMm, edge.End))
        {
            return;
        }

        if (edge.IsArc && edge.LengthMm <= NoLengthMm)
        {
            return;
        }

        _edges.Add((edge, source));
    }

    /// <summary>The outline, with pieces of one edge that follow one another put together again.</summary>
    public CutOutline Finish(Outline before)
    {
        List<(Edge Edge, int Source)> joined = [];
        foreach ((Edge Edge, int Source) next in _edges)
        {
            if (joined.Count > 0 && Continue(joined[^1], next, before) is { } edge)
            {
                joined[^1] = (edge, next.Source);
                continue;
            }

            joined.Add(next);
        }

        if (joined.Count > 1 && Continue(joined[^1], joined[0], before) is { } around)
        {
            joined[0] = (around, joined[0].Source);
            joined.RemoveAt(joined.Count - 1);
        }

        BeginAsBefore(joined);
        return new CutOutline(
            Outline.FromVertices([.. joined.Select(piece => new Vertex(piece.Edge.Start, piece.Edge.Bulge))]),
            [.. joined.Select(piece => piece.Source)]
        );
    }

    /// <summary>Turns the chain so that it begins with the first edge there was, as far as it is left.</summary>
    private static void BeginAsBefore(List<(Edge Edge, int Source)> chain)
    {
        int[] kept = [.. Enumerable.Range(0, chain.Count).Where(i => chain[i].Source >= 0)];
        if (kept.Length == 0)
        {
            return;
        }

        // Sources rise along the chain but where the outline begins; of an edge cut in two its first part is there.
        int first = kept[0];
        for (int k = 0; k < kept.Length; k++)
        {
            int before = kept[(k + kept.Length - 1) % kept.Length];
            if (chain[kept[k]].Source < chain[before].Source)
            {
                first = kept[k];
            }
        }

        (Edge Edge, int Source)[] turned = [.. chain.Skip(first), .. chain.Take(first)];
        chain.Clear();
        chain.AddRange(turned);
    }

    private static Edge? Continue((Edge Edge, int Source) first, (Edge Edge, int Source) second, Outline before)
    {
        bool oneEdge = first.Source == second.Source && first.Source >= 0;
        if (!oneEdge || !first.Edge.End.IsWithin(NoLengthMm, second.Edge.Start))
        {
            return null;
        }

        Edge whole = before.Edges[first.Source];
        bool isWhole = first.Edge.Start == whole.Start && second.Edge.End == whole.End;
        return isWhole ? whole
            : whole.IsArc ? Edge.Arc(first.Edge.Start, second.Edge.End, first.Edge.Sweep + second.Edge.Sweep)
            : new Edge(first.Edge.Start, second.Edge.End);
    }
}
