using Flushback.Dxf.Reading.Entities;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Curves;

/// <summary>Places a curve in the drawing and makes lines and arcs of it, exactly where it can and fitted where it must.</summary>
internal sealed class CurveEdges(double toleranceMm, int mostEdges)
{
    private readonly BiarcFit _fit = new(toleranceMm, mostEdges);

    /// <summary>True when the last curve did not go into lines and arcs exactly.</summary>
    public bool WasFitted { get; private set; }

    /// <summary>The edges of a curve in millimetres; null when they are too many.</summary>
    public List<Edge>? Of(PlaneCurve curve, PlaneMap map)
    {
        WasFitted = false;
        return curve switch
        {
            EdgePath path => OfPath(path, map),
            CirclePath { Circle: var circle } => OfEllipse(
                new EllipsePath(circle.Centre, new(circle.RadiusMm, 0), new(0, circle.RadiusMm), 0, Math.Tau),
                map
            ),
            EllipsePath ellipse => OfEllipse(ellipse, map),
            BezierPath bezier => Fitted(bezier.Pieces.Select(piece => piece.Mapped(map))),
            _ => throw new InvalidOperationException("A curve of an unknown kind."),
        };
    }

    private List<Edge>? OfPath(EdgePath path, PlaneMap map)
    {
        List<Edge> edges = new(path.Edges.Length);
        foreach (Edge edge in path.Edges)
        {
            if (!edge.IsArc || map.IsSimilarity || edge.Chord.Length == 0)
            {
                edges.Add(
                    new Edge(map.Apply(edge.Start), map.Apply(edge.End), map.IsMirror ? -edge.Bulge : edge.Bulge)
                );
                continue;
            }

            // An arc under unequal scales is part of an ellipse.
            Vector u = edge.Start - edge.Centre;
            EllipsePath part = new(edge.Centre, u, u.Left, 0, edge.Sweep.Radians);
            if (OfEllipse(part, map) is not { } fitted)
            {
                return null;
            }

            // The ends are those of the polyline, to the last digit.
            fitted[0] = fitted[0] with
            {
                Start = map.Apply(edge.Start),
            };
            fitted[^1] = fitted[^1] with { End = map.Apply(edge.End) };
            edges.AddRange(fitted);
        }

        return edges;
    }

    private List<Edge>? OfEllipse(EllipsePath ellipse, PlaneMap map)
    {
        Point centre = map.Apply(ellipse.Centre);
        Vector u = map.Apply(ellipse.U);
        Vector v = map.Apply(ellipse.V);
        return Fitted(EllipsePiece.Of(centre, u, v, ellipse.From, ellipse.Sweep));
    }

    private List<Edge>? Fitted(IEnumerable<SmoothPiece> pieces)
    {
        WasFitted = true;
        List<Edge> edges = [];
        foreach (SmoothPiece piece in pieces)
        {
            if (!_fit.TryAppend(piece, edges))
            {
                return null;
            }
        }

        return ArcMerging.Merged(edges);
    }
}
