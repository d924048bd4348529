using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading.Curves;
using Flushback.Dxf.Reading.Entities;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading;

/// <summary>Places a curve in the drawing and makes a clean shape of it: no edge without length, all in range.</summary>
internal sealed class ShapeMaker(ReadingLog log, DxfLimits limits, double curveToleranceMm)
{
    /// <summary>Shorter edges are nothing: a nanometre is a thousandth of what any machine here can tell.</summary>
    private const double ZeroLengthMm = 1e-6;

    /// <summary>An arc that rises less above its chord is a line: a picometre, below the rounding of coordinates.</summary>
    private const double StraightMm = 1e-9;

    private readonly CurveEdges _curveEdges = new(curveToleranceMm, limits.MaxVertices);

    /// <summary>The shape of a curve, in millimetres; null when nothing usable is left, which the log says.</summary>
    public ShapeGeometry? Make(in EntityRecord record, PlaneCurve curve, PlaneMap map)
    {
        // A curve to be fitted is measured before that costs anything; what it becomes, and all else, afterwards.
        bool needsFit = curve is EllipsePath or BezierPath || !map.IsSimilarity;
        foreach (Point point in needsFit ? curve.Frame.Select(map.Apply) : [])
        {
            if (!IsInRange(point))
            {
                return OutOfRange(record, point);
            }
        }

        ShapeGeometry? geometry =
            curve is CirclePath { Circle: var circle } && map.IsSimilarity
                ? CircleOf(record, circle, map)
                : PathOf(record, curve, map);
        if (geometry is null)
        {
            return null;
        }

        Box box = ShapeBounds.Of(geometry);
        Point low = new(box.MinX, box.MinY);
        Point high = new(box.MaxX, box.MaxY);
        return !IsInRange(low) ? OutOfRange(record, low)
            : !IsInRange(high) ? OutOfRange(record, high)
            : geometry;
    }

    private ShapeGeometry? PathOf(in EntityRecord record, PlaneCurve curve, PlaneMap map)
    {
        List<Edge>? edges = _curveEdges.Of(curve, map);
        if (edges is null)
        {
            log.LimitExceeded(
                new DxfLimitHit(nameof(DxfLimits.MaxVertices), limits.MaxVertices, limits.MaxVertices + 1.0),
                $"{record.Label} needs more than {Wording.Whole(limits.MaxVertices)} arcs to stay within {Wording.Mm(curveToleranceMm)}: "
                    + "simplify it, or allow a wider curve tolerance.",
                record.Line
            );
            return null;
        }

        int far = edges.FindIndex(edge => !IsInRange(edge.Start) || !IsInRange(edge.End));
        if (far >= 0)
        {
            return OutOfRange(record, IsInRange(edges[far].Start) ? edges[far].End : edges[far].Start);
        }

        bool wasFitted = _curveEdges.WasFitted;
        if (wasFitted)
        {
            string within = $"to lines and arcs within {Wording.Mm(curveToleranceMm)}";
            log.Count(record, DxfIssueCodes.CurveFitted, $"was fitted {within}", $"were fitted {within}");
        }

        return PathOf(record, edges, IsClosed(curve, map), wasFitted);
    }

    private static bool IsClosed(PlaneCurve curve, PlaneMap map) =>
        curve switch
        {
            EdgePath path => path.IsClosed,
            CirclePath => true,
            EllipsePath ellipse => ellipse.IsWhole,
            BezierPath spline => map.Apply(spline.Start).IsWithin(ZeroLengthMm, map.Apply(spline.End)),
            _ => false,
        };

    private FullCircle? CircleOf(in EntityRecord record, Circle circle, PlaneMap map)
    {
        Circle placed = new(map.Apply(circle.Centre), circle.RadiusMm * map.Scale);
        if (placed.RadiusMm > ZeroLengthMm)
        {
            return new FullCircle(placed);
        }

        log.Fault(
            record,
            DxfIssueCodes.EntityInvalid,
            $"has a radius of {Wording.Mm(placed.RadiusMm)}: delete it, or check the unit",
            placed.Centre
        );
        return null;
    }

    private ShapeGeometry? PathOf(in EntityRecord record, List<Edge> edges, bool isClosed, bool wasFitted)
    {
        List<Edge> kept = new(edges.Count);
        foreach (Edge edge in edges)
        {
            if (edge.Chord.Length > ZeroLengthMm)
            {
                // Begin exactly where the last edge ended: what lay between them had no length.
                Point start = kept.Count > 0 ? kept[^1].End : edge.Start;
                kept.Add(new Edge(start, edge.End, IsStraight(edge) ? 0 : edge.Bulge));
            }
            else if (wasFitted)
            {
                // A fitted piece of no length is no fault of the drawing's.
            }
            else if (edge.Bulge != 0)
            {
                log.Fault(
                    record,
                    DxfIssueCodes.EntityInvalid,
                    $"has a bulge of {Wording.Plain(edge.Bulge)} between two equal vertices at {Wording.At(edge.Start)} mm, "
                        + "which is no arc: draw that part again",
                    edge.Start
                );
                return null;
            }
            else
            {
                log.Repair(
                    DxfIssueCodes.ZeroLength,
                    $"{record.Label} has an edge of no length at {Wording.At(edge.Start)} mm; it was removed.",
                    record,
                    edge.Start
                );
            }
        }

        return kept.Count == 0 ? null : Whole(record, kept, isClosed);
    }

    private ShapeGeometry? Whole(in EntityRecord record, List<Edge> kept, bool isClosed)
    {
        if (!isClosed)
        {
            return new OpenChain([.. kept]);
        }

        kept[^1] = kept[^1] with { End = kept[0].Start };
        bool enclosesNothing = kept.Count < 2 || (kept.Count == 2 && kept[0].Bulge == -kept[1].Bulge);
        if (!enclosesNothing)
        {
            return new ClosedOutline(
                Outline.FromVertices([.. kept.Select(edge => new Vertex(edge.Start, edge.Bulge))])
            );
        }

        log.Fault(
            record,
            DxfIssueCodes.EntityInvalid,
            "is closed but encloses nothing: its edges lie on each other; draw it again",
            kept[0].Start
        );
        return null;
    }

    private static bool IsStraight(in Edge edge) => Math.Abs(edge.Bulge) * edge.Chord.Length / 2 < StraightMm;

    // Not true for numbers that overflowed on the way here either.
    private bool IsInRange(Point point) =>
        Math.Abs(point.X) <= limits.MaxCoordinateMm && Math.Abs(point.Y) <= limits.MaxCoordinateMm;

    private ShapeGeometry? OutOfRange(in EntityRecord record, Point point)
    {
        log.Fault(
            record,
            DxfIssueCodes.CoordinateRange,
            $"reaches out to {Wording.At(point)} mm and {Wording.Mm(limits.MaxCoordinateMm)} is the limit: move the drawing to "
                + "the origin, or check the unit",
            point
        );
        return null;
    }
}
