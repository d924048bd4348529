using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Inspection.Repair;

/// <summary>Edges that stand for a run of edges of a chain: the same one, as a rule.</summary>
/// <param name="Edges">What is to be drawn.</param>
/// <param name="First">The first edge of the run; it may lie past the end of a closed chain, which goes on at its start.</param>
/// <param name="Count">How many edges the run has.</param>
internal sealed record Piece(ImmutableArray<Edge> Edges, int First, int Count)
{
    /// <summary>Where it begins.</summary>
    public Point Start => Edges[0].Start;

    /// <summary>Where it ends.</summary>
    public Point End => Edges[^1].End;

    /// <summary>The same with its first edge beginning elsewhere.</summary>
    public Piece From(Point start) => this with { Edges = Edges.SetItem(0, Edges[0] with { Start = start }) };

    /// <summary>The same with its last edge ending elsewhere.</summary>
    public Piece To(Point end) => this with { Edges = Edges.SetItem(Edges.Length - 1, Edges[^1] with { End = end }) };
}
