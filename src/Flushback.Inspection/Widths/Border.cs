using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Widths;

/// <summary>The border of an area: loops with the area on the left of travel.</summary>
internal sealed class Border
{
    private readonly int[] _before;
    private readonly int[] _loopOf;
    private readonly ImmutableArray<BorderLoop> _loops;
    private readonly ImmutableArray<string> _handles;

    /// <param name="loops">Loops travelled with the area on their left.</param>
    public Border(IEnumerable<BorderLoop> loops)
    {
        _loops = [.. loops];
        Edges = [.. _loops.SelectMany(loop => loop.Path.Edges)];
        _handles = [.. _loops.SelectMany(loop => loop.EdgeHandles)];
        _before = new int[Edges.Length];
        _loopOf = new int[Edges.Length];
        int first = 0;
        for (int loop = 0; loop < _loops.Length; loop++)
        {
            int count = _loops[loop].Path.Edges.Length;
            for (int i = 0; i < count; i++)
            {
                _before[first + i] = first + ((i + count - 1) % count);
                _loopOf[first + i] = loop;
            }

            first += count;
        }
    }

    /// <summary>All edges, loop after loop.</summary>
    public ImmutableArray<Edge> Edges { get; }

    /// <summary>The edge that ends where one begins.</summary>
    public int Before(int edge) => _before[edge];

    /// <summary>The contour an edge belongs to.</summary>
    public CutContour ContourOf(int edge) => _loops[_loopOf[edge]].Contour;

    /// <summary>Handles (or places) of the entities at both ends of a way across.</summary>
    public ImmutableArray<string> HandlesOf(Width width) =>
        [.. new[] { _handles[width.FromEdge], _handles[width.ToEdge] }.Distinct()];

    /// <summary>Curvature of an edge, positive when its centre lies on the side of the area; zero for a line. In 1/mm.</summary>
    public double CurvatureOf(int edge)
    {
        ref readonly Edge e = ref Edges.ItemRef(edge);
        return e.IsArc ? Math.Sign(e.Bulge) / e.RadiusMm : 0;
    }

    /// <summary>The turn at the vertex where an edge begins: positive to the left, where the area's corner is convex.</summary>
    public Angle TurnAtStart(int edge)
    {
        Vector before = Edges[_before[edge]].TangentAt(1);
        Vector after = Edges[edge].TangentAt(0);
        return new Angle(Math.Atan2(before.Cross(after), before.Dot(after)));
    }
}
