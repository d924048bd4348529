using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>Reads the curve of one entity, whatever its type.</summary>
internal sealed class EntityCurves
{
    private readonly ReadingLog _log;
    private readonly LinesAndArcs _linesAndArcs;
    private readonly Polylines _polylines;
    private readonly Ellipses _ellipses;
    private readonly Splines _splines;

    /// <param name="file">The file.</param>
    /// <param name="log">Where faults are told.</param>
    /// <param name="limits">How large a spline may be.</param>
    /// <param name="flatTolerance">How much an entity may climb and still be flat, in units of the file.</param>
    public EntityCurves(TagFile file, ReadingLog log, DxfLimits limits, double flatTolerance)
    {
        _log = log;
        NumberFields fields = new(file, log);
        _linesAndArcs = new LinesAndArcs(fields, log, flatTolerance);
        _polylines = new Polylines(file, fields, log, flatTolerance);
        _ellipses = new Ellipses(fields, log, flatTolerance);
        _splines = new Splines(file, log, limits, flatTolerance);
    }

    /// <summary>The entity's curve and its place; null when it has none, which the log says.</summary>
    public PlacedCurve? Of(in EntityRecord record) =>
        record.Type switch
        {
            "LINE" => InDrawing(_linesAndArcs.Line(record)),
            "ARC" => InOwnPlane(record, _linesAndArcs.Arc(record)),
            "CIRCLE" => InOwnPlane(record, _linesAndArcs.Circle(record)),
            "LWPOLYLINE" => InOwnPlane(record, _polylines.Light(record)),
            "POLYLINE" when _polylines.IsThreeDimensional(record) => InDrawing(_polylines.Heavy(record)),
            "POLYLINE" => InOwnPlane(record, _polylines.Heavy(record)),
            "ELLIPSE" => InDrawing(_ellipses.Ellipse(record)),
            "SPLINE" => InDrawing(_splines.Spline(record)),
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
            _log.Fault(
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
            _log.LeftOut(record, DxfIssueCodes.EntityIgnored, "is no outline", "are no outlines");
        }
        else
        {
            _log.Fault(record, DxfIssueCodes.EntityUnreadable, UnreadableTypes.WhatIsWrong(record.Type));
        }

        return null;
    }
}
