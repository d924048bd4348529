using Flushback.Geometry.Chains;

namespace Flushback.Geometry.Distances;

/// <summary>Shortest distances to whole outlines: nearer boxes first, boxes beyond the best so far left out.</summary>
internal static class OutlineDistance
{
    public static Nearest Between(Point p, BoxTree tree)
    {
        Nearest best = Nearest.None;
        Search(p, tree, BoxTree.Root, ref best);
        return best;
    }

    public static Nearest Between(BoxTree a, BoxTree b)
    {
        Nearest best = Nearest.None;
        Search(a, BoxTree.Root, b, BoxTree.Root, ref best);
        return best;
    }

    /// <summary>Replaces the best so far by a way from a tree's edges to one edge, where that is shorter.</summary>
    public static void Shorten(ref Nearest best, BoxTree tree, in Edge edge)
    {
        if (tree.Edges.Length > 0)
        {
            Search(tree, BoxTree.Root, edge, edge.Bounds, ref best);
        }
    }

    private static void Search(BoxTree tree, int node, in Edge edge, in Box box, ref Nearest best)
    {
        if (tree[node].GapTo(box) >= best.DistanceMm)
        {
            return;
        }

        if (tree.IsLeaf(node))
        {
            best = Nearest.Shorter(best, EdgeToEdge.Between(tree.EdgeAt(node), edge));
            return;
        }

        (int near, int far) = (2 * node, (2 * node) + 1);
        if (tree[far].GapTo(box) < tree[near].GapTo(box))
        {
            (near, far) = (far, near);
        }

        Search(tree, near, edge, box, ref best);
        Search(tree, far, edge, box, ref best);
    }

    private static void Search(Point p, BoxTree tree, int node, ref Nearest best)
    {
        if (tree.IsLeaf(node))
        {
            best = Nearest.Shorter(best, PointToEdge.Between(p, tree.EdgeAt(node)));
            return;
        }

        (int near, int far) = (2 * node, (2 * node) + 1);
        (double nearGap, double farGap) = (tree[near].GapTo(p), tree[far].GapTo(p));
        if (farGap < nearGap)
        {
            (near, far, nearGap, farGap) = (far, near, farGap, nearGap);
        }

        if (nearGap < best.DistanceMm)
        {
            Search(p, tree, near, ref best);
        }

        if (farGap < best.DistanceMm)
        {
            Search(p, tree, far, ref best);
        }
    }

    private static void Search(BoxTree a, int nodeA, BoxTree b, int nodeB, ref Nearest best)
    {
        if (a.IsLeaf(nodeA) && b.IsLeaf(nodeB))
        {
            best = Nearest.Shorter(best, EdgeToEdge.Between(a.EdgeAt(nodeA), b.EdgeAt(nodeB)));
            return;
        }

        // Open the wider of the two boxes.
        bool openA = !a.IsLeaf(nodeA) && (b.IsLeaf(nodeB) || a[nodeA].HalfPerimeterMm >= b[nodeB].HalfPerimeterMm);
        (int nearA, int nearB) = openA ? (2 * nodeA, nodeB) : (nodeA, 2 * nodeB);
        (int farA, int farB) = openA ? (nearA + 1, nodeB) : (nodeA, nearB + 1);
        (double nearGap, double farGap) = (a[nearA].GapTo(b[nearB]), a[farA].GapTo(b[farB]));
        if (farGap < nearGap)
        {
            (nearA, nearB, nearGap, farA, farB, farGap) = (farA, farB, farGap, nearA, nearB, nearGap);
        }

        if (nearGap < best.DistanceMm)
        {
            Search(a, nearA, b, nearB, ref best);
        }

        if (farGap < best.DistanceMm)
        {
            Search(a, farA, b, farB, ref best);
        }
    }
}
