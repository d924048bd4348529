using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>ELLIPSE: given in drawing coordinates; its extrusion only says which way it turns.</summary>
internal sealed class Ellipses(NumberFields fields, ReadingLog log, double flatTolerance)
{
    /// <summary>A sweep this near to a whole turn is one: parameters are often written with six decimals.</summary>
    private const double WholeTurnTolerance = 1e-5;

    /// <summary>The ellipse or its part; null when it is faulty, which the log says.</summary>
    public PlaneCurve? Ellipse(in EntityRecord record)
    {
        fields.Take(record);
        if (fields.IsDamaged)
        {
            return null;
        }

        Point centre = fields.PointAt(10);
        Vector major = new(fields[11], fields[21]);
        double ratio = fields.Or(40, 1);
        if (!centre.IsFinite || double.IsNaN(major.Length))
        {
            return Faulty(record, "lacks its centre or its major axis (groups 10, 20, 11, 21): draw it again");
        }

        if (Math.Abs(fields.Or(31, 0)) > flatTolerance || record.Facing == Facing.Tilted)
        {
            log.Fault(
                record,
                DxfIssueCodes.EntityNotFlat,
                "lies in a tilted plane (groups 31, 210, 220, 230): flatten the drawing to one plane"
            );
            return null;
        }

        if (!(ratio > 0) || major.Length == 0)
        {
            return Faulty(record, "has an axis of no length (groups 11, 21, 40): delete it or draw it again");
        }

        double from = fields.Or(41, 0);
        double to = fields.Or(42, Math.Tau);
        if (from == to)
        {
            return Faulty(record, "starts and ends at the same place (groups 41, 42): delete it or draw it again");
        }

        double sweep = (to - from) % Math.Tau;
        sweep = sweep <= WholeTurnTolerance ? sweep + Math.Tau : sweep;
        sweep = sweep >= Math.Tau - WholeTurnTolerance ? Math.Tau : sweep;

        // The minor axis is the normal times the major one: seen from behind it points the other way.
        Vector minor = (record.Facing == Facing.Down ? major.Right : major.Left) * ratio;
        return new EllipsePath(centre, major, minor, from, sweep);
    }

    private PlaneCurve? Faulty(in EntityRecord record, string what)
    {
        log.Fault(record, DxfIssueCodes.EntityInvalid, what);
        return null;
    }
}
