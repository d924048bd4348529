namespace Flushback.Geometry.Chains;

/// <summary>Finds the pairs of edges of a tree whose boxes come near one another.</summary>
internal sealed class BoxPairs(BoxTree tree, double withinMm, CancellationToken cancellation)
{
    private readonly List<(int Lower, int Higher)> _pairs = [];

    /// <summary>Every such pair once, lower index first.</summary>
    /// <exception cref="OperationCanceledException">Cancellation was asked for.</exception>
    public List<(int Lower, int Higher)> Find()
    {
        Within(BoxTree.Root);
        return _pairs;
    }

    private void Within(int node)
    {
        if (tree.IsLeaf(node))
        {
            return;
        }

        Within(2 * node);
        Within((2 * node) + 1);
        Across(2 * node, (2 * node) + 1);
    }

    private void Across(int lower, int higher)
    {
        cancellation.ThrowIfCancellationRequested();

        // Written so that the gap to an empty box, which is no number, rules the pair out too.
        if (!(tree[lower].GapTo(tree[higher]) <= withinMm))
        {
            return;
        }

        if (tree.IsLeaf(lower))
        {
            _pairs.Add((lower - tree.LeafCount, higher - tree.LeafCount));
            return;
        }

        // Both lie at the same depth, so both have children.
        Across(2 * lower, 2 * higher);
        Across(2 * lower, (2 * higher) + 1);
        Across((2 * lower) + 1, 2 * higher);
        Across((2 * lower) + 1, (2 * higher) + 1);
    }
}
