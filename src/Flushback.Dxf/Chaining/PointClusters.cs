using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>Groups points that lie within a distance of each other, directly or through others.</summary>
/// <remarks>A grid of that distance holds the points, so each is compared with near ones only: near-linear in their number.</remarks>
internal static class PointClusters
{
    /// <summary>
    /// So many points of one cell are compared with; a crowd like that is an error whichever of its members are named,
    /// and without a bound a hostile drawing could make the search quadratic.
    /// </summary>
    private const int MostInCell = 64;

    /// <summary>The groups of two or more points, each as indices in rising order; in the order of their first point.</summary>
    public static List<List<int>> Of(IReadOnlyList<Point> points, double distanceMm, CancellationToken ct = default)
    {
        int[] parent = new int[points.Count];
        Dictionary<(long X, long Y), int> newestInCell = new(points.Count);
        int[] olderInCell = new int[points.Count];
        int[] cellCount = new int[points.Count];
        for (int i = 0; i < points.Count; i++)
        {
            if ((i & 0x3FF) == 0)
            {
                ct.ThrowIfCancellationRequested();
            }

            parent[i] = i;
            Point p = points[i];
            (long X, long Y) cell = ((long)Math.Floor(p.X / distanceMm), (long)Math.Floor(p.Y / distanceMm));
            for (long dx = -1; dx <= 1; dx++)
            {
                for (long dy = -1; dy <= 1; dy++)
                {
                    int other = newestInCell.GetValueOrDefault((cell.X + dx, cell.Y + dy), -1);
                    for (; other >= 0; other = olderInCell[other])
                    {
                        if (p.IsWithin(distanceMm, points[other]))
                        {
                            Unite(parent, i, other);
                        }
                    }
                }
            }

            int newest = newestInCell.GetValueOrDefault(cell, -1);
            olderInCell[i] = newest;
            cellCount[i] = newest < 0 ? 1 : cellCount[newest] + 1;
            if (cellCount[i] <= MostInCell)
            {
                newestInCell[cell] = i;
            }
        }

        return Groups(parent);
    }

    private static List<List<int>> Groups(int[] parent)
    {
        Dictionary<int, List<int>> byRoot = [];
        for (int i = 0; i < parent.Length; i++)
        {
            int root = Root(parent, i);
            if (!byRoot.TryGetValue(root, out List<int>? group))
            {
                byRoot.Add(root, group = []);
            }

            group.Add(i);
        }

        return [.. byRoot.Values.Where(group => group.Count > 1).OrderBy(group => group[0])];
    }

    private static int Root(int[] parent, int i)
    {
        while (parent[i] != i)
        {
            parent[i] = parent[parent[i]];
            i = parent[i];
        }

        return i;
    }

    private static void Unite(int[] parent, int a, int b)
    {
        int first = Root(parent, a);
        int second = Root(parent, b);
        parent[Math.Max(first, second)] = Math.Min(first, second);
    }
}
