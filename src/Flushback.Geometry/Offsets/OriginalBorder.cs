using System.Collections.Immutable;
using Flushback.Geometry.Chains;
using Flushback.Geometry.Checking;
using Flushback.Geometry.Crossings;

namespace Flushback.Geometry.Offsets;

/// <summary>Gives the parts of a border that did not change the coordinates they had.</summary>
/// <remarks>
/// After an offset and the opposite one a border is made of stretches of the original and of new arcs. Stretches come back
/// wrong in the last digits, and at a joint of two edges that is tangent but for rounding there may be crumbs of arcs
/// about it. What lies within a nanometre of an original edge is that edge again.
/// </remarks>
internal sealed class OriginalBorder
{
    private const int New = -1;

    private readonly double _sameMm = GeometryTolerances.Default.TouchingMm;
    private readonly ImmutableArray<Outline> _outlines;
    private readonly EdgeSearch _search;
    private readonly ImmutableArray<int> _next;

    public OriginalBorder(Region region)
    {
        _outlines = [.. region.Outlines];
        _search = new EdgeSearch(new BoxTree([.. _outlines.SelectMany(outline => outline.Edges)]));
        _next =
        [
            .. _outlines.SelectMany(
                (outline, k) =>
                {
                    int first = _outlines[..k].Sum(before => before.Edges.Length);
                    return outline.Edges.Select((_, i) => first + ((i + 1) % outline.Edges.Length));
                }
            ),
        ];
    }

    /// <summary>The region with its unchanged edges as they were.</summary>
    public Region LaidBack(Region region) => new(LaidBack(region.Border), [.. region.Holes.Select(LaidBack)]);

    private Outline LaidBack(Outline outline)
    {
        List<(Edge Edge, int Source)> stretches = Merged([.. outline.Edges.Select(edge => (edge, SourceOf(edge)))]);
        if (stretches.Count < 2)
        {
            return outline;
        }

        Point[] corners = [.. stretches.Select((_, i) => CornerBefore(stretches, i))];
        List<Vertex> vertices = [];
        for (int i = 0; i < stretches.Count; i++)
        {
            (Edge edge, int source) = stretches[i];
            Point end = corners[(i + 1) % corners.Length];

            // A crumb both of whose ends are the same original vertex is gone.
            bool isCrumb = corners[i] == end && edge.LengthMm <= 4 * _sameMm;
            if (!isCrumb)
            {
                vertices.Add(new Vertex(corners[i], BulgeOf(edge, source, corners[i], end)));
            }
        }

        if (vertices.Count < 2)
        {
            return outline;
        }

        Outline laidBack = Outline.FromVertices([.. vertices]);
        return _outlines.FirstOrDefault(original => IsSame(original, laidBack)) ?? laidBack;
    }

    /// <summary>The index of the original edge a stretch runs along; <see cref="New"/> for an arc that was not there.</summary>
    private int SourceOf(Edge edge)
    {
        (int index, double distanceMm) = _search.NearestTo(edge.PointAt(0.5));
        return distanceMm <= _sameMm && IsOnBorder(edge.PointAt(0.25)) && IsOnBorder(edge.PointAt(0.75)) ? index : New;
    }

    private bool IsOnBorder(Point p) => _search.NearestTo(p).DistanceMm <= _sameMm;

    /// <summary>Stretches of one original edge that follow one another, as one.</summary>
    private static List<(Edge Edge, int Source)> Merged(List<(Edge Edge, int Source)> stretches)
    {
        int first = Enumerable.Range(0, stretches.Count).FirstOrDefault(i => !IsSameEdge(i), 0);
        List<(Edge Edge, int Source)> merged = [];
        for (int i = 0; i < stretches.Count; i++)
        {
            int index = (first + i) % stretches.Count;
            if (merged.Count > 0 && IsSameEdge(index))
            {
                merged[^1] = (merged[^1].Edge with { End = stretches[index].Edge.End }, stretches[index].Source);
            }
            else
            {
                merged.Add(stretches[index]);
            }
        }

        return merged;

        bool IsSameEdge(int i)
        {
            int before = stretches[(i + stretches.Count - 1) % stretches.Count].Source;
            return stretches[i].Source != New && stretches[i].Source == before;
        }
    }

    /// <summary>Where a stretch begins: at an original vertex, when that is where it began.</summary>
    private Point CornerBefore(List<(Edge Edge, int Source)> stretches, int index)
    {
        (Edge edge, int source) = stretches[index];
        int before = stretches[(index + stretches.Count - 1) % stretches.Count].Source;
        if (source != New && before != New && _next[before] == source)
        {
            return _search.Edges[source].Start;
        }

        (int nearest, double distanceMm) = _search.NearestTo(edge.Start);
        Edge original = _search.Edges[nearest];
        return distanceMm > _sameMm ? edge.Start
            : original.Start.IsWithin(_sameMm, edge.Start) ? original.Start
            : original.End.IsWithin(_sameMm, edge.Start) ? original.End
            : edge.Start;
    }

    private double BulgeOf(Edge edge, int source, Point start, Point end)
    {
        if (source == New)
        {
            return edge.Bulge;
        }

        Edge original = _search.Edges[source];
        if (!original.IsArc || (start == original.Start && end == original.End))
        {
            return original.Bulge;
        }

        double from = start == original.Start ? 0 : EdgePosition.FractionAt(original, start);
        double to = end == original.End ? 1 : EdgePosition.FractionAt(original, end);
        return Math.Tan((original.Sweep * ((to - from) / 4)).Radians);
    }

    /// <summary>Whether two outlines have the same edges, begun anywhere.</summary>
    private static bool IsSame(Outline original, Outline other)
    {
        int first = other.Edges.IndexOf(original.Edges[0]);
        return first >= 0
            && original.Edges.Length == other.Edges.Length
            && original.Edges.AsSpan().SequenceEqual([.. other.Edges[first..], .. other.Edges[..first]]);
    }
}
