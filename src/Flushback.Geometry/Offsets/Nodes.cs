namespace Flushback.Geometry.Offsets;

/// <summary>Makes one place of points that lie within a tolerance of one another.</summary>
/// <remarks>Points are joined through points between them, so that the order they come in does not matter.</remarks>
internal sealed class Nodes(double joinMm)
{
    private readonly Dictionary<(double Column, double Row), List<int>> _cells = [];
    private readonly List<Point> _points = [];
    private readonly List<int> _parents = [];

    /// <summary>Adds a point; what is returned stands for it in <see cref="NodeOf"/>.</summary>
    public int Add(Point p)
    {
        int added = _points.Count;
        _points.Add(p);
        _parents.Add(added);
        (double column, double row) = (Math.Floor(p.X / joinMm), Math.Floor(p.Y / joinMm));
        for (double x = column - 1; x <= column + 1; x++)
        {
            for (double y = row - 1; y <= row + 1; y++)
            {
                JoinWith(added, _cells.GetValueOrDefault((x, y)));
            }
        }

        if (!_cells.TryGetValue((column, row), out List<int>? cell))
        {
            _cells[(column, row)] = cell = [];
        }

        cell.Add(added);
        return added;
    }

    /// <summary>The node that an added point belongs to, once all have been added.</summary>
    public int NodeOf(int added)
    {
        while (_parents[added] != added)
        {
            added = _parents[added] = _parents[_parents[added]];
        }

        return added;
    }

    /// <summary>Where a node lies: the first of its points.</summary>
    public Point PositionOf(int node) => _points[node];

    private void JoinWith(int added, List<int>? others)
    {
        foreach (int other in others ?? [])
        {
            if (_points[other].IsWithin(joinMm, _points[added]))
            {
                (int a, int b) = (NodeOf(added), NodeOf(other));
                (_parents[a], _parents[b]) = (Math.Min(a, b), Math.Min(a, b));
            }
        }
    }
}
