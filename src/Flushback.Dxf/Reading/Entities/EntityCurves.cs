using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>Reads the curve of one entity, whatever its type.</summary>
internal sealed class EntityCurves
{
    private readonly ReadingLog log;
    private readonly LinesAndArcs linesAndArcs;
    private readonly Polylines polylines;
    private readonly Ellipses ellipses;
    private readonly Splines splines;

    /// <param name="file">The file.</param>
    /// <param name="log">Where faults are told.</param>
    /// <param name="limits">How large a spline may be.</param>
    /// <param name="flatTolerance">How much an entity may climb and still be flat, in units of the file.</param>
    public EntityCurves(TagFile file, ReadingLog log, DxfLimits limits, double flatTolerance)
    {
        this.log = log;
        NumberFields fields = new(file, log);
        linesAndArcs = new LinesAndArcs(fields, log, flatTolerance);
        polylines = new Polylines(file, fields, log, flatTolerance);
        ellipses = new Ellipses(fields, log, flatTolerance);
        splines = new Splines(file, log, limits, flatTolerance);
    }

    /// <summary>The entity's curve and its place; null when it has none, which the log says.</summary>
    public PlacedCurve? Of(in EntityRecord record) =>
        record.Type switch
        {
            "LINE" => InDrawing(linesAndArcs.Line(record)),
            "ARC" => InOwnPlane(record, linesAndArcs.Arc(record)),
            "CIRCLE" => InOwnPlane(record, linesAndArcs.Circle(record)),
            "LWPOLYLINE" => InOwnPlane(record, polylines.Light(record)),
            "POLYLINE" when polylines.IsThreeDimensional(record) => InDrawing(polylines.Heavy(record)),
            "POLYLINE" => InOwnPlane(record, polylines.Heavy(record)),
            "ELLIPSE" => InDrawing(ellipses.Ellipse(record)),
            "SPLINE" => InDrawing(splines.Spline(record)),
            _ => Other(record),
        };

    private static PlacedCurve? InDrawing(PlaneCurve? curve) =>
        curve is null ? null : new PlacedCurve(curve, PlaneMap.Identity);

    private PlacedCurve? InOwnPlane(in EntityRecord record, PlaneCurve? curve)
    {
        if (curve is null)
        {
            return null;
        }

        if (record.Facing == Facing.Tilted)
        {
            log.Fault(
                record,
                DxfIssueCodes.EntityNotFlat,
                "lies in a tilted plane (groups 210, 220, 230): flatten the drawing to one plane"
            );
            return null;
        }

        return new PlacedCurve(curve, record.Facing == Facing.Down ? PlaneMap.FromBehind : PlaneMap.Identity);
    }

    private PlacedCurve? Other(in EntityRecord record)
    {
        if (EntityTypes.HaveNoOutline.Contains(record.Type))
        {
            log.LeftOut(record, DxfIssueCodes.EntityIgnored, "is no outline", "are no outlines");
        }
        else
        {
            log.Fault(record, DxfIssueCodes.EntityUnreadable, "cannot be read: explode it to lines and arcs");
        }

        return null;
    }
}
