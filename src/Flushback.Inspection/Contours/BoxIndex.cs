using System.Collections.Immutable;
using System.Numerics;
using Flushback.Geometry;

namespace Flushback.Inspection.Contours;

/// <summary>Boxes in a tree, near ones together, for finding those that touch without comparing all.</summary>
/// <remarks>
/// A balanced binary tree over an order in which each half lies apart along the longer axis. Node 1 holds all, node n has
/// the children 2n and 2n+1.
/// </remarks>
internal sealed class BoxIndex
{
    private const int Root = 1;

    private readonly ImmutableArray<Box> _boxes;
    private readonly int[] _order;
    private readonly Box[] _nodes;
    private readonly int _leafCount;

    public BoxIndex(ImmutableArray<Box> boxes)
    {
        _boxes = boxes;
        _order = NearTogether(boxes);
        _leafCount = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(1, boxes.Length));
        _nodes = new Box[2 * _leafCount];
        for (int i = 0; i < _leafCount; i++)
        {
            _nodes[_leafCount + i] = i < boxes.Length ? boxes[_order[i]] : Box.Empty;
        }

        for (int node = _leafCount - 1; node >= Root; node--)
        {
            _nodes[node] = _nodes[2 * node].Including(_nodes[(2 * node) + 1]);
        }
    }

    /// <summary>An order of boxes in which every half of it, and every half of that, lies together.</summary>
    public static int[] NearTogether(ImmutableArray<Box> boxes)
    {
        int[] order = [.. Enumerable.Range(0, boxes.Length)];
        double[] keys = new double[boxes.Length];
        Arrange(boxes, order, keys, 0, order.Length);
        return order;
    }

    /// <summary>The boxes that touch a box, in no particular order.</summary>
    public IEnumerable<int> Touching(Box box)
    {
        Stack<int> open = new([Root]);
        while (open.TryPop(out int node))
        {
            if (!_nodes[node].Touches(box))
            {
                continue;
            }

            if (node >= _leafCount)
            {
                yield return _order[node - _leafCount];
                continue;
            }

            open.Push((2 * node) + 1);
            open.Push(2 * node);
        }
    }

    /// <summary>Every pair of touching boxes once, the lower index first, in the order of that.</summary>
    public IEnumerable<(int Lower, int Higher)> Pairs()
    {
        for (int i = 0; i < _boxes.Length; i++)
        {
            foreach (int other in Touching(_boxes[i]).Where(other => other > i).Order())
            {
                yield return (i, other);
            }
        }
    }

    private static void Arrange(ImmutableArray<Box> boxes, int[] order, double[] keys, int from, int to)
    {
        if (to - from < 2)
        {
            return;
        }

        Box centres = Box.Empty;
        for (int i = from; i < to; i++)
        {
            centres = centres.Including(boxes[order[i]].Centre);
        }

        for (int i = from; i < to; i++)
        {
            Point centre = boxes[order[i]].Centre;
            keys[i] = centres.WidthMm >= centres.HeightMm ? centre.X : centre.Y;
        }

        Array.Sort(keys, order, from, to - from);

        // The left half fills its part of the tree, so that every node holds what lies together.
        int half = (int)BitOperations.RoundUpToPowerOf2((uint)(to - from)) / 2;
        Arrange(boxes, order, keys, from, from + half);
        Arrange(boxes, order, keys, from + half, to);
    }
}
