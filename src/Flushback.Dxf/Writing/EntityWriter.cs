using Flushback.Geometry;

namespace Flushback.Dxf.Writing;

/// <summary>Writes entities in the words of one version.</summary>
/// <param name="tags">Where to write.</param>
/// <param name="dialect">What the version wants.</param>
/// <param name="handles">Where handles come from; null when the file has none.</param>
/// <param name="owner">Handle of the model space block record, for versions that name owners.</param>
/// <param name="unit">Unit of the written coordinates.</param>
internal sealed class EntityWriter(
    TagWriter tags,
    Dialect dialect,
    HandleSource? handles,
    string owner,
    DrawingUnit unit
)
{
    /// <summary>
    /// Beyond this radius the rounding of centre and angles moves an arc's ends by more than a tenth of a nanometre (a
    /// radius of 1e5 mm by some ulps), so flatter arcs are written as a polyline with a bulge, which keeps its ends.
    /// </summary>
    private const double LargestArcRadiusMm = 1e5;

    private readonly double _millimetresPerUnit = unit.Millimetres();

    /// <summary>Writes everything on the given layers.</summary>
    public void Write(IReadOnlyList<OverlayLayer> layers)
    {
        foreach (OverlayLayer layer in layers)
        {
            foreach (OverlayEntity entity in layer.Entities)
            {
                Write(EntityLook.OnLayer(layer.Name), entity);
            }
        }
    }

    /// <summary>Writes one entity, to look as told.</summary>
    public void Write(in EntityLook look, OverlayEntity entity)
    {
        switch (entity)
        {
            case OverlayPath path when dialect.HasLightPolylines:
                LightPolyline(look, path);
                break;
            case OverlayPath path:
                HeavyPolyline(look, path);
                break;
            case OverlayEdge { Edge: var edge } when !edge.IsArc:
                Open("LINE", look, "AcDbLine");
                Place(edge.Start, look);
                Place(edge.End, look, 11);
                break;
            case OverlayEdge { Edge: { RadiusMm: > LargestArcRadiusMm } edge }:
                Write(look, new OverlayPath([edge], IsClosed: false));
                break;
            case OverlayEdge { Edge: var edge }:
                Arc(look, edge);
                break;
            case OverlayCircle { Circle: var circle }:
                Open("CIRCLE", look, "AcDbCircle");
                Place(circle.Centre, look);
                tags.Number(40, InUnits(circle.RadiusMm));
                break;
            case OverlayPoint point:
                Open("POINT", look, "AcDbPoint");
                Place(point.At, look);
                break;
            case OverlayText text:
                Open("TEXT", look, "AcDbText");
                Place(text.At, look);
                tags.Number(40, InUnits(text.HeightMm)).Text(1, text.Text);
                if (text.Alignment != TextAlignment.Left)
                {
                    tags.Whole(72, (int)text.Alignment);
                    Place(text.At, look, 11);
                }

                Marker("AcDbText");
                break;
        }
    }

    private void Arc(in EntityLook look, in Edge edge)
    {
        // An ARC always runs counter-clockwise.
        Edge turned = edge.Bulge > 0 ? edge : edge.Reversed;
        Point centre = turned.Centre;
        Open("ARC", look, "AcDbCircle");
        Place(centre, look);
        tags.Number(40, InUnits(turned.RadiusMm));
        Marker("AcDbArc");
        tags.Number(50, DegreesTo(centre, turned.Start)).Number(51, DegreesTo(centre, turned.End));
    }

    private void LightPolyline(in EntityLook look, OverlayPath path)
    {
        List<Vertex> vertices = VerticesOf(path);
        Open("LWPOLYLINE", look, "AcDbPolyline");
        tags.Whole(90, vertices.Count).Whole(70, path.IsClosed ? 1 : 0);
        if (look.Height != 0)
        {
            tags.Number(38, look.Height);
        }

        foreach (Vertex vertex in vertices)
        {
            tags.Number(10, InUnits(vertex.Position.X)).Number(20, InUnits(vertex.Position.Y));
            if (vertex.Bulge != 0)
            {
                tags.Number(42, vertex.Bulge);
            }
        }
    }

    private void HeavyPolyline(in EntityLook look, OverlayPath path)
    {
        Open("POLYLINE", look, "AcDb2dPolyline");
        tags.Whole(66, 1).Place(10, 0, 0, look.Height).Whole(70, path.IsClosed ? 1 : 0);
        foreach (Vertex vertex in VerticesOf(path))
        {
            Open("VERTEX", look, "AcDbVertex");
            Marker("AcDb2dVertex");
            Place(vertex.Position, look);
            if (vertex.Bulge != 0)
            {
                tags.Number(42, vertex.Bulge);
            }
        }

        Open("SEQEND", look, subclass: null);
    }

    private void Open(string type, in EntityLook look, string? subclass)
    {
        tags.Text(0, type);
        if (handles is not null)
        {
            tags.Text(5, handles.Next());
        }

        if (dialect.HasOwners)
        {
            tags.Text(330, owner);
        }

        Marker("AcDbEntity");
        tags.Spelled(8, look.Layer.Span).Copied(look.Groups.Span);
        if (subclass is not null)
        {
            Marker(subclass);
        }
    }

    private void Marker(string subclass)
    {
        if (dialect.HasMarkers)
        {
            tags.Text(100, subclass);
        }
    }

    private void Place(Point at, in EntityLook look, int code = 10) =>
        tags.Place(code, InUnits(at.X), InUnits(at.Y), look.Height);

    private static double DegreesTo(Point centre, Point to)
    {
        double degrees = (to - centre).Direction.Degrees;
        return degrees < 0 ? degrees + 360 : degrees;
    }

    private double InUnits(double mm) => mm / _millimetresPerUnit;

    private static List<Vertex> VerticesOf(OverlayPath path)
    {
        List<Vertex> vertices = [.. path.Edges.Select(edge => new Vertex(edge.Start, edge.Bulge))];
        if (!path.IsClosed)
        {
            vertices.Add(new Vertex(path.Edges[^1].End));
        }

        return vertices;
    }
}
