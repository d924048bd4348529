using System.Collections.Immutable;
using Flushback.Dxf.Tags;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>LWPOLYLINE and POLYLINE, with bulges.</summary>
internal sealed class Polylines(TagFile file, NumberFields fields, ReadingLog log, double flatTolerance)
{
    private const int ClosedFlag = 1;
    private const int ThreeDimensionalFlag = 8;
    private const int MeshFlags = 16 | 64;
    private const int SplineFrameFlag = 16;

    private readonly List<Vertex> _vertices = [];

    /// <summary>The polyline, in its own plane; null when it is faulty, which the log says.</summary>
    public PlaneCurve? Light(in EntityRecord record)
    {
        _vertices.Clear();
        int flags = 0;
        double x = double.NaN;
        for (int i = record.First + 1; i < record.End; i++)
        {
            DxfTag tag = file.Tags[i];
            if (tag.Code is not (10 or 20 or 42 or 70))
            {
                continue;
            }

            if (!file.TryNumber(tag, out double value))
            {
                log.DamagedNumber(file, tag, record);
                return null;
            }

            switch (tag.Code)
            {
                case 10:
                    x = value;
                    break;
                case 20:
                    _vertices.Add(new Vertex(x, value));
                    break;
                case 42 when _vertices.Count > 0:
                    _vertices[^1] = _vertices[^1] with { Bulge = value };
                    break;
                case 70:
                    flags = (int)value;
                    break;
            }
        }

        return Path(record, (flags & ClosedFlag) != 0);
    }

    /// <summary>The polyline with its VERTEX entities: flat ones in their own plane, level 3D ones in the drawing's.</summary>
    public PlaneCurve? Heavy(in EntityRecord record)
    {
        fields.Take(record);
        int flags = fields.Flags(70);
        if (fields.IsDamaged)
        {
            return null;
        }

        if ((flags & MeshFlags) != 0)
        {
            log.Fault(record, DxfIssueCodes.EntityNotFlat, "is a mesh: draw the outline with lines and arcs");
            return null;
        }

        if (!TakeVertices(record, IsThreeDimensional(flags)))
        {
            return null;
        }

        return Path(record, (flags & ClosedFlag) != 0);
    }

    /// <summary>True when a POLYLINE is given in drawing coordinates rather than in a plane of its own.</summary>
    public bool IsThreeDimensional(in EntityRecord record)
    {
        fields.Take(record);
        return IsThreeDimensional(fields.Flags(70));
    }

    private static bool IsThreeDimensional(int flags) => (flags & ThreeDimensionalFlag) != 0;

    private bool TakeVertices(in EntityRecord record, bool isThreeDimensional)
    {
        _vertices.Clear();
        double height = double.NaN;
        for (int i = record.End; i < record.FollowersEnd; )
        {
            int end = i + 1;
            while (end < record.FollowersEnd && file.Tags[end].Code != 0)
            {
                end++;
            }

            EntityRecord follower = record with { First = i, End = end };
            bool isVertex = file.Is(file.Tags[i], "VERTEX"u8);
            i = end;
            if (!isVertex)
            {
                continue;
            }

            fields.Take(follower);
            if (fields.IsDamaged)
            {
                return false;
            }

            // The frame of a spline-fit polyline is scaffolding: the vertices fitted along it are the drawn line.
            if ((fields.Flags(70) & SplineFrameFlag) != 0)
            {
                continue;
            }

            _vertices.Add(new Vertex(fields.PointAt(10), fields.Or(42, 0)));
            double z = fields.Or(30, 0);
            height = double.IsNaN(height) ? z : height;
            if (isThreeDimensional && Math.Abs(z - height) > flatTolerance)
            {
                log.Fault(
                    record,
                    DxfIssueCodes.EntityNotFlat,
                    "is a 3D polyline with vertices at different heights (z): flatten the drawing to one plane"
                );
                return false;
            }
        }

        return true;
    }

    private EdgePath? Path(in EntityRecord record, bool isClosed)
    {
        if (_vertices.Count < 2 || _vertices.Exists(vertex => !vertex.Position.IsFinite))
        {
            log.Fault(
                record,
                DxfIssueCodes.EntityInvalid,
                _vertices.Count < 2
                    ? "has fewer than two vertices: delete it or draw it again"
                    : "has a vertex without x or y: draw it again"
            );
            return null;
        }

        int edges = isClosed ? _vertices.Count : _vertices.Count - 1;
        ImmutableArray<Edge>.Builder path = ImmutableArray.CreateBuilder<Edge>(edges);
        for (int i = 0; i < edges; i++)
        {
            Vertex from = _vertices[i];
            path.Add(new Edge(from.Position, _vertices[(i + 1) % _vertices.Count].Position, from.Bulge));
        }

        return new EdgePath(path.MoveToImmutable(), isClosed);
    }
}
