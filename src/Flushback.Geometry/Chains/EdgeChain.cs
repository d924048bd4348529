using System.Collections.Immutable;

namespace Flushback.Geometry.Chains;

/// <summary>A run of consecutive edges, open or closed, made ready for many distance queries: see <c>Distance</c>.</summary>
/// <remarks>Immutable. A query leaves out whole stretches that lie farther away than the best found so far.</remarks>
public sealed class EdgeChain(ImmutableArray<Edge> edges)
{
    /// <summary>The edges, in order.</summary>
    public ImmutableArray<Edge> Edges => Boxes.Edges;

    internal BoxTree Boxes { get; } = new(edges);
}
