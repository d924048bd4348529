using System.Numerics;
using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>Groups points that lie within a distance of each other, directly or through others.</summary>
/// <remarks>
/// A grid holds the points, so that each is compared with near ones only. Its cells are kept by their hash alone: points of
/// another cell that share it are told by their distance, and without keys the grid is small enough that its cost stays in
/// proportion to the number of points far beyond what a cache holds.
/// </remarks>
internal sealed class PointClusters
{
    /// <summary>
    /// So many points of one cell are compared with; a crowd like that is an error whichever of its members are named,
    /// and without a bound a hostile drawing could make the search quadratic.
    /// </summary>
    private const int MostInCell = 256;

    /// <summary>Width of a cell in distances: wide enough that most points need not look into its neighbours.</summary>
    private const int DistancesInCell = 4;

    private const int None = -1;

    private readonly IReadOnlyList<Point> _points;
    private readonly double _distanceMm;
    private readonly int[] _parent;
    private readonly int[] _newestInCell;
    private readonly int[] _olderInCell;
    private readonly int[] _countInCell;

    private PointClusters(IReadOnlyList<Point> points, double distanceMm)
    {
        _points = points;
        _distanceMm = distanceMm;
        _parent = new int[points.Count];
        _olderInCell = new int[points.Count];
        int cells = (int)BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, points.Count));
        _countInCell = new int[cells];
        _newestInCell = new int[cells];
        Array.Fill(_newestInCell, None);
    }

    /// <summary>The groups of two or more points, each as indices in rising order; in the order of their first point.</summary>
    public static IEnumerable<List<int>> Of(
        IReadOnlyList<Point> points,
        double distanceMm,
        CancellationToken ct = default
    )
    {
        PointClusters clusters = new(points, distanceMm);
        for (int i = 0; i < points.Count; i++)
        {
            if ((i & 0x3FF) == 0)
            {
                ct.ThrowIfCancellationRequested();
            }

            clusters.Add(i);
        }

        return clusters.Groups();
    }

    private void Add(int i)
    {
        _parent[i] = i;
        Point p = _points[i];
        double cellMm = DistancesInCell * _distanceMm;

        // A little farther than the distance, for the rounding of sums and quotients.
        double reachMm = 1.25 * _distanceMm;
        (long lowX, long highX) = (CellOf(p.X - reachMm, cellMm), CellOf(p.X + reachMm, cellMm));
        (long lowY, long highY) = (CellOf(p.Y - reachMm, cellMm), CellOf(p.Y + reachMm, cellMm));
        for (long x = lowX; x <= highX; x++)
        {
            for (long y = lowY; y <= highY; y++)
            {
                UniteWithCell(i, IndexOf(x, y));
            }
        }

        int own = IndexOf(CellOf(p.X, cellMm), CellOf(p.Y, cellMm));
        if (_countInCell[own] < MostInCell)
        {
            _olderInCell[i] = _newestInCell[own];
            _newestInCell[own] = i;
            _countInCell[own]++;
        }
    }

    private void UniteWithCell(int i, int cell)
    {
        Point p = _points[i];
        for (int other = _newestInCell[cell]; other != None; other = _olderInCell[other])
        {
            if (p.IsWithin(_distanceMm, _points[other]))
            {
                Unite(i, other);
            }
        }
    }

    private static long CellOf(double mm, double cellMm) => (long)Math.Floor(mm / cellMm);

    private int IndexOf(long x, long y)
    {
        // Multiplicative hashing by odd constants near 2^64 / the golden ratio; its high bits are the mixed ones.
        ulong hash = ((ulong)x * 0x9E3779B97F4A7C15) ^ (((ulong)y * 0xC2B2AE3D27D4EB4F) + ((ulong)x >> 32));
        hash *= 0xD6E8FEB86659FD93;
        return (int)((hash >> 32) & (uint)(_newestInCell.Length - 1));
    }

    // A root is the lowest index of its group, so the groups come out by their first point. Each is made when it is asked
    // for: a large drawing has very many, and nobody keeps them.
    private IEnumerable<List<int>> Groups()
    {
        int[] end = new int[_parent.Length + 1];
        for (int i = 0; i < _parent.Length; i++)
        {
            end[Root(i) + 1]++;
        }

        for (int i = 0; i < _parent.Length; i++)
        {
            end[i + 1] += end[i];
        }

        int[] members = new int[_parent.Length];
        int[] next = [.. end];
        for (int i = 0; i < _parent.Length; i++)
        {
            members[next[Root(i)]++] = i;
        }

        return Enumerable
            .Range(0, _parent.Length)
            .Where(root => end[root + 1] - end[root] > 1)
            .Select(root => new List<int>(members[end[root]..end[root + 1]]));
    }

    private int Root(int i)
    {
        while (_parent[i] != i)
        {
            _parent[i] = _parent[_parent[i]];
            i = _parent[i];
        }

        return i;
    }

    private void Unite(int a, int b)
    {
        int first = Root(a);
        int second = Root(b);
        _parent[Math.Max(first, second)] = Math.Min(first, second);
    }
}
