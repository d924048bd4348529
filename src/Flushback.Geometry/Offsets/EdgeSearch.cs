using System.Collections.Immutable;
using Flushback.Geometry.Chains;
using Flushback.Geometry.Distances;

namespace Flushback.Geometry.Offsets;

/// <summary>Finds which edge lies nearest to a point.</summary>
internal sealed class EdgeSearch(BoxTree tree)
{
    public ImmutableArray<Edge> Edges => tree.Edges;

    /// <summary>The index of the nearest edge, and its distance in millimetres; the first of several equally near.</summary>
    public (int Index, double DistanceMm) NearestTo(Point p)
    {
        (int Index, double DistanceMm) best = (0, double.PositiveInfinity);
        Search(p, BoxTree.Root, ref best);
        return best;
    }

    private void Search(Point p, int node, ref (int Index, double DistanceMm) best)
    {
        if (!(tree[node].GapTo(p) < best.DistanceMm))
        {
            return;
        }

        if (tree.IsLeaf(node))
        {
            double distanceMm = PointToEdge.Between(p, tree.EdgeAt(node)).DistanceMm;
            best = distanceMm < best.DistanceMm ? (node - tree.LeafCount, distanceMm) : best;
            return;
        }

        (int near, int far) = (2 * node, (2 * node) + 1);
        if (tree[far].GapTo(p) < tree[near].GapTo(p))
        {
            (near, far) = (far, near);
        }

        Search(p, near, ref best);
        Search(p, far, ref best);
    }
}
