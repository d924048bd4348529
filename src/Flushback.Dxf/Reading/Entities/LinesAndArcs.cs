using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>LINE, ARC and CIRCLE.</summary>
internal sealed class LinesAndArcs(NumberFields fields, ReadingLog log, double flatTolerance)
{
    /// <summary>The line, in drawing coordinates whatever its extrusion; null when it is faulty, which the log says.</summary>
    public PlaneCurve? Line(in EntityRecord record)
    {
        fields.Take(record);
        Point start = fields.PointAt(10);
        Point end = fields.PointAt(11);
        if (fields.IsDamaged)
        {
            return null;
        }

        if (!start.IsFinite || !end.IsFinite)
        {
            log.Fault(record, DxfIssueCodes.EntityInvalid, "lacks an end point (groups 10, 20, 11, 21): draw it again");
            return null;
        }

        double climb = Math.Abs(fields.Or(31, 0) - fields.Or(30, 0));
        if (climb > flatTolerance)
        {
            log.Fault(
                record,
                DxfIssueCodes.EntityNotFlat,
                "has ends at different heights (z): flatten the drawing to one plane"
            );
            return null;
        }

        return new EdgePath([new Edge(start, end)], IsClosed: false);
    }

    /// <summary>The circle, in its own plane.</summary>
    public PlaneCurve? Circle(in EntityRecord record) =>
        TakeCircle(record) is { } circle ? new CirclePath(circle) : null;

    /// <summary>The arc, counter-clockwise in its own plane.</summary>
    public PlaneCurve? Arc(in EntityRecord record)
    {
        if (TakeCircle(record) is not { } circle)
        {
            return null;
        }

        double from = fields[50];
        double to = fields[51];
        if (double.IsNaN(from) || double.IsNaN(to))
        {
            log.Fault(
                record,
                DxfIssueCodes.EntityInvalid,
                "lacks its start or end angle (groups 50, 51): draw it again"
            );
            return null;
        }

        if (from == to)
        {
            log.Fault(
                record,
                DxfIssueCodes.EntityInvalid,
                "starts and ends at the same angle, so it is either nothing or a whole circle: delete it or draw a CIRCLE"
            );
            return null;
        }

        double sweep = Degrees.Sweep(from, to);
        if (sweep >= 360)
        {
            return new CirclePath(circle);
        }

        Point start = circle.Centre + (Degrees.Direction(from) * circle.RadiusMm);
        Point end = circle.Centre + (Degrees.Direction(to) * circle.RadiusMm);
        return new EdgePath([Edge.Arc(start, end, Angle.FromDegrees(sweep))], IsClosed: false);
    }

    private Circle? TakeCircle(in EntityRecord record)
    {
        fields.Take(record);
        if (fields.IsDamaged)
        {
            return null;
        }

        Circle circle = new(fields.PointAt(10), fields[40]);
        if (!circle.Centre.IsFinite || double.IsNaN(circle.RadiusMm))
        {
            log.Fault(
                record,
                DxfIssueCodes.EntityInvalid,
                "lacks its centre or radius (groups 10, 20, 40): draw it again"
            );
            return null;
        }

        if (circle.RadiusMm <= 0)
        {
            log.Fault(
                record,
                DxfIssueCodes.EntityInvalid,
                $"has a radius of {Wording.Plain(circle.RadiusMm)}, and a radius must be above zero: delete it or draw it again"
            );
            return null;
        }

        return circle;
    }
}
