using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading.Entities;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading;

/// <summary>Places a curve in the drawing and makes a clean shape of it: no edge without length, all in range.</summary>
internal sealed class ShapeMaker(ReadingLog log, double maxCoordinateMm)
{
    /// <summary>Shorter edges are nothing: a nanometre is a thousandth of what any machine here can tell.</summary>
    private const double ZeroLengthMm = 1e-6;

    /// <summary>An arc that rises less above its chord is a line: a picometre, below the rounding of coordinates.</summary>
    private const double StraightMm = 1e-9;

    /// <summary>The shape of a curve, in millimetres; null when nothing usable is left, which the log says.</summary>
    public ShapeGeometry? Make(in EntityRecord record, PlaneCurve curve, PlaneMap map)
    {
        ShapeGeometry? geometry = curve switch
        {
            CirclePath { Circle: var circle } => CircleOf(record, circle, map),
            EdgePath path => PathOf(record, [.. path.Edges.Select(edge => Mapped(edge, map))], path.IsClosed),
            _ => throw new InvalidOperationException("A curve of an unknown kind."),
        };
        return geometry is null || IsInRange(record, geometry) ? geometry : null;
    }

    private static Edge Mapped(in Edge edge, PlaneMap map) =>
        new(map.Apply(edge.Start), map.Apply(edge.End), map.IsMirror ? -edge.Bulge : edge.Bulge);

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

    private ShapeGeometry? PathOf(in EntityRecord record, Edge[] edges, bool isClosed)
    {
        List<Edge> kept = new(edges.Length);
        foreach (Edge edge in edges)
        {
            if (edge.Chord.Length > ZeroLengthMm)
            {
                // Begin exactly where the last edge ended: what lay between them had no length.
                Point start = kept.Count > 0 ? kept[^1].End : edge.Start;
                kept.Add(new Edge(start, edge.End, IsStraight(edge) ? 0 : edge.Bulge));
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

    private bool IsInRange(in EntityRecord record, ShapeGeometry geometry)
    {
        Box box = ShapeBounds.Of(geometry);
        Point farthest = new(
            Math.Abs(box.MinX) > Math.Abs(box.MaxX) ? box.MinX : box.MaxX,
            Math.Abs(box.MinY) > Math.Abs(box.MaxY) ? box.MinY : box.MaxY
        );
        if (Math.Max(Math.Abs(farthest.X), Math.Abs(farthest.Y)) <= maxCoordinateMm)
        {
            return true;
        }

        log.Fault(
            record,
            DxfIssueCodes.CoordinateRange,
            $"reaches out to {Wording.At(farthest)} mm and {Wording.Mm(maxCoordinateMm)} is the limit: move the drawing to "
                + "the origin, or check the unit",
            farthest
        );
        return false;
    }
}
