namespace Flushback.Geometry.Chains;

/// <summary>Finds the pairs of edges of a tree whose boxes come near one another.</summary>
/// <param name="tree">The edges and their boxes.</param>
/// <param name="withinMm">Boxes farther apart than this are no pair.</param>
/// <param name="visit">Takes a pair, lower index first; false ends the search.</param>
/// <param name="cancellation">Ends the work early, by an exception.</param>
internal sealed class BoxPairs(
    BoxTree tree,
    double withinMm,
    Func<int, int, bool> visit,
    CancellationToken cancellation
)
{
    private bool _isOver;

    /// <summary>Visits every such pair once.</summary>
    /// <exception cref="OperationCanceledException">Cancellation was asked for.</exception>
    public void Run() => Within(BoxTree.Root);

    private void Within(int node)
    {
        if (tree.IsLeaf(node) || _isOver)
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
        if (_isOver || !(tree[lower].GapTo(tree[higher]) <= withinMm))
        {
            return;
        }

        if (tree.IsLeaf(lower))
        {
            _isOver = !visit(lower - tree.LeafCount, higher - tree.LeafCount);
            return;
        }

        // Both lie at the same depth, so both have children.
        Across(2 * lower, 2 * higher);
        Across(2 * lower, (2 * higher) + 1);
        Across((2 * lower) + 1, 2 * higher);
        Across((2 * lower) + 1, (2 * higher) + 1);
    }
}
