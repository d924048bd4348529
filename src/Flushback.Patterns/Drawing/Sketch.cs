using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Patterns.Drawing;

/// <summary>Draws a counter-clockwise outline edge by edge and remembers what each edge is.</summary>
/// <typeparam name="TFace">The names of the part's faces.</typeparam>
internal sealed class Sketch<TFace>(Point start)
{
    // Shorter than this is rounding of a length that is none.
    private const double NoLengthMm = 1e-6;

    private readonly List<Vertex> _vertices = [];
    private readonly List<TFace> _faces = [];
    private Point _at = start;

    /// <summary>A line from where the sketch has come to.</summary>
    public Sketch<TFace> Line(Point to, TFace face) => Add(to, 0, face);

    /// <summary>A round about a centre, counter-clockwise between two outward normals; a corner when the radius is 0.</summary>
    public Sketch<TFace> Round(Point centre, double radiusMm, Vector from, Vector to, TFace face)
    {
        Add(centre + (from * radiusMm), 0, face);
        double turn = Math.Atan2(from.Cross(to), from.Dot(to));
        return Add(centre + (to * radiusMm), Math.Tan((turn < 0 ? turn + Math.Tau : turn) / 4), face);
    }

    /// <summary>A face to a point: straight, or with a hollow between two straight lands.</summary>
    public Sketch<TFace> Face(Point to, double hollowMm, double landMm, TFace face)
    {
        Vector whole = to - _at;
        if (hollowMm <= 0)
        {
            return Line(to, face);
        }

        Vector land = whole.Normalized * landMm;
        double hollowLength = whole.Length - (2 * landMm);
        Line(_at + land, face);
        Add(to - land, -2 * hollowMm / hollowLength, face);
        return Line(to, face);
    }

    /// <summary>Edges that follow on one another, the first from where the sketch has come to.</summary>
    public Sketch<TFace> Along(IEnumerable<Edge> edges, TFace face)
    {
        foreach (Edge edge in edges)
        {
            Add(edge.End, edge.Bulge, face);
        }

        return this;
    }

    /// <summary>An edge from where the sketch has come to, bent as in <see cref="Vertex.Bulge"/>.</summary>
    public Sketch<TFace> Add(Point to, double bulge, TFace face)
    {
        if (!to.IsWithin(NoLengthMm, _at))
        {
            _vertices.Add(new Vertex(_at, bulge));
            _faces.Add(face);
            _at = to;
        }

        return this;
    }

    /// <summary>The outline, which has come back to its start, and the face of each of its edges.</summary>
    public (Outline Outline, ImmutableArray<TFace> Faces) Close() =>
        (Outline.FromVertices(_vertices.ToArray()), [.. _faces]);
}
