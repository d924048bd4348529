using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Distances;

namespace Flushback.Inspection.Contours;

/// <summary>Which contour lies in which, across layers.</summary>
/// <remarks>
/// Contours within none are parts; those within a part are its holes; one within a hole is metal again: another part, or
/// dirt. Where contours cross each other the nesting is that of one of their points, and is told as a fault elsewhere.
/// </remarks>
internal sealed class NestedContours
{
    private readonly int[] _depth;
    private readonly int[] _parent;

    public NestedContours(ImmutableArray<CutContour> contours, CancellationToken ct)
    {
        Contours = contours;
        ImmutableArray<Box> boxes = [.. contours.Select(contour => contour.Outline.Bounds)];
        double[] areas = [.. contours.Select(contour => contour.Outline.AreaMm2)];
        BoxIndex index = new(boxes);
        _parent = new int[contours.Length];
        _depth = new int[contours.Length];
        int[] largestFirst = [.. Enumerable.Range(0, contours.Length).OrderByDescending(i => areas[i])];
        foreach (int i in largestFirst)
        {
            ct.ThrowIfCancellationRequested();
            Box box = boxes[i];
            _parent[i] = index
                .Touching(box)
                .Where(other => areas[other] > areas[i] && Covers(boxes[other], box))
                .OrderBy(other => areas[other])
                .FirstOrDefault(other => Holds(contours[other].Outline, contours[i].Outline), -1);
            _depth[i] = _parent[i] < 0 ? 0 : _depth[_parent[i]] + 1;
        }
    }

    /// <summary>The contours, in the order of the file.</summary>
    public ImmutableArray<CutContour> Contours { get; }

    /// <summary>The outer contours of metal: those that lie within an even number of others.</summary>
    public IEnumerable<int> Outer => Enumerable.Range(0, Contours.Length).Where(i => _depth[i] % 2 == 0);

    /// <summary>The smallest contour that holds one; -1 for none.</summary>
    public int ParentOf(int contour) => _parent[contour];

    /// <summary>What is cut out of each outer contour.</summary>
    public ILookup<int, int> Holes =>
        Enumerable.Range(0, Contours.Length).Where(i => _depth[i] % 2 == 1).ToLookup(i => _parent[i]);

    private static bool Covers(Box outer, Box inner) =>
        outer.MinX <= inner.MinX && outer.MinY <= inner.MinY && outer.MaxX >= inner.MaxX && outer.MaxY >= inner.MaxY;

    private static bool Holds(Outline outer, Outline inner)
    {
        foreach (Edge edge in inner.Edges)
        {
            // A point on the border would tell nothing.
            Point point = edge.PointAt(0.5);
            if (Distance.Between(point, outer).DistanceMm > CutTolerances.TouchingMm)
            {
                return outer.Contains(point);
            }
        }

        return false;
    }
}
