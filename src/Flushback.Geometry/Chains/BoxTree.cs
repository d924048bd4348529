using System.Collections.Immutable;
using System.Numerics;

namespace Flushback.Geometry.Chains;

/// <summary>Boxes about ever longer runs of consecutive edges, for leaving out what is far away.</summary>
/// <remarks>
/// Edges next to each other in an outline are next to each other in the plane, so a plain binary tree over their order
/// needs no sorting. Node 1 holds all edges, node n has the children 2n and 2n+1, and edge i is the leaf
/// <see cref="LeafCount"/> + i; leaves past the last edge are empty boxes, which are infinitely far from everything.
/// </remarks>
internal sealed class BoxTree
{
    public const int Root = 1;

    private readonly Box[] _nodes;

    public BoxTree(ImmutableArray<Edge> edges)
    {
        Edges = edges;
        LeafCount = (int)BitOperations.RoundUpToPowerOf2((uint)edges.Length);
        _nodes = new Box[2 * LeafCount];
        for (int i = 0; i < LeafCount; i++)
        {
            _nodes[LeafCount + i] = i < edges.Length ? edges[i].Bounds : Box.Empty;
        }

        for (int node = LeafCount - 1; node >= Root; node--)
        {
            _nodes[node] = _nodes[2 * node].Including(_nodes[(2 * node) + 1]);
        }
    }

    public ImmutableArray<Edge> Edges { get; }

    public int LeafCount { get; }

    public ref readonly Box this[int node] => ref _nodes[node];

    public bool IsLeaf(int node) => node >= LeafCount;

    public ref readonly Edge EdgeAt(int leaf) => ref Edges.ItemRef(leaf - LeafCount);
}
