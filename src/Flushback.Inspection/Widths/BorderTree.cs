using Flushback.Geometry;
using Flushback.Geometry.Crossings;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Widths;

/// <summary>The edges of a border in a tree, near ones together, each node with its box and its directions inward.</summary>
internal sealed class BorderTree
{
    public const int Root = 1;

    private readonly Border _border;
    private readonly int[] _order;
    private readonly Box[] _boxes;
    private readonly NormalCone[] _cones;
    private readonly int _leafCount;

    public BorderTree(Border border)
    {
        _border = border;
        _order = BoxIndex.NearTogether([.. border.Edges.Select(edge => edge.Bounds)]);
        _leafCount = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)Math.Max(1, _order.Length));
        _boxes = new Box[2 * _leafCount];
        _cones = new NormalCone[2 * _leafCount];
        for (int i = 0; i < _leafCount; i++)
        {
            bool isEdge = i < _order.Length;
            _boxes[_leafCount + i] = isEdge ? border.Edges[_order[i]].Bounds : Box.Empty;
            _cones[_leafCount + i] = isEdge ? NormalCone.Of(border, _order[i]) : NormalCone.None;
        }

        for (int node = _leafCount - 1; node >= Root; node--)
        {
            _boxes[node] = _boxes[2 * node].Including(_boxes[(2 * node) + 1]);
            _cones[node] = _cones[2 * node].With(_cones[(2 * node) + 1]);
        }
    }

    public bool IsLeaf(int node) => node >= _leafCount;

    /// <summary>The number of the edge that a leaf holds.</summary>
    public int EdgeAt(int leaf) => _order[leaf - _leafCount];

    /// <summary>Distance between the boxes of two nodes; infinite when one holds nothing.</summary>
    public double Gap(int one, int other) =>
        _cones[one].HalfRad < 0 || _cones[other].HalfRad < 0
            ? double.PositiveInfinity
            : _boxes[one].GapTo(_boxes[other]);

    /// <summary>Whether stretches of two nodes can face each other.</summary>
    public bool CanFace(int one, int other, double withinRad) => _cones[one].Faces(_cones[other], withinRad);

    /// <summary>Half the way round a node's box: which of two to open first.</summary>
    public double SizeMm(int node) => _boxes[node].HalfPerimeterMm;

    /// <summary>Whether the way between two points meets no edge but at its ends.</summary>
    public bool IsFree(Point from, Point to)
    {
        // Both ends stand square on the border, so a little away from it there is nothing more to touch.
        Vector way = to - from;
        double length = way.Length;
        double clear = Math.Min(10 * CutTolerances.TouchingMm, length / 4);
        Edge line = new(from + (way * (clear / length)), to - (way * (clear / length)));
        Box box = line.Bounds;
        Stack<int> open = new([Root]);
        while (open.TryPop(out int node))
        {
            if (!_boxes[node].Touches(box) || IsBeside(line, _boxes[node]))
            {
                continue;
            }

            if (!IsLeaf(node))
            {
                open.Push(2 * node);
                open.Push((2 * node) + 1);
            }
            else if (Crossing.Between(line, _border.Edges[EdgeAt(node)], 0).Count > 0)
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsBeside(in Edge line, Box box)
    {
        Vector normal = line.Chord.Left;
        Vector toCentre = box.Centre - line.Start;
        double reach = (Math.Abs(normal.X) * box.WidthMm / 2) + (Math.Abs(normal.Y) * box.HeightMm / 2);
        return Math.Abs(normal.Dot(toCentre)) > reach * (1 + 1e-9);
    }
}
