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
    private readonly double _millimetresPerUnit = unit.Millimetres();

    /// <summary>Writes everything on the given layers.</summary>
    public void Write(IReadOnlyList<OverlayLayer> layers)
    {
        foreach (OverlayLayer layer in layers)
        {
            foreach (OverlayEntity entity in layer.Entities)
            {
                Write(layer.Name, entity);
            }
        }
    }

    private void Write(string layer, OverlayEntity entity)
    {
        switch (entity)
        {
            case OverlayPath path when dialect.HasLightPolylines:
                LightPolyline(layer, path);
                break;
            case OverlayPath path:
                HeavyPolyline(layer, path);
                break;
            case OverlayCircle { Circle: var circle }:
                Open("CIRCLE", layer, "AcDbCircle");
                Place(circle.Centre);
                tags.Number(40, InUnits(circle.RadiusMm));
                break;
            case OverlayPoint point:
                Open("POINT", layer, "AcDbPoint");
                Place(point.At);
                break;
            case OverlayText text:
                Open("TEXT", layer, "AcDbText");
                Place(text.At);
                tags.Number(40, InUnits(text.HeightMm)).Text(1, text.Text);
                Marker("AcDbText");
                break;
        }
    }

    private void LightPolyline(string layer, OverlayPath path)
    {
        List<Vertex> vertices = VerticesOf(path);
        Open("LWPOLYLINE", layer, "AcDbPolyline");
        tags.Whole(90, vertices.Count).Whole(70, path.IsClosed ? 1 : 0);
        foreach (Vertex vertex in vertices)
        {
            tags.Number(10, InUnits(vertex.Position.X)).Number(20, InUnits(vertex.Position.Y));
            if (vertex.Bulge != 0)
            {
                tags.Number(42, vertex.Bulge);
            }
        }
    }

    private void HeavyPolyline(string layer, OverlayPath path)
    {
        Open("POLYLINE", layer, "AcDb2dPolyline");
        tags.Whole(66, 1).Place(10, 0, 0).Whole(70, path.IsClosed ? 1 : 0);
        foreach (Vertex vertex in VerticesOf(path))
        {
            Open("VERTEX", layer, "AcDbVertex");
            Marker("AcDb2dVertex");
            Place(vertex.Position);
            if (vertex.Bulge != 0)
            {
                tags.Number(42, vertex.Bulge);
            }
        }

        Open("SEQEND", layer, subclass: null);
    }

    private void Open(string type, string layer, string? subclass)
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
        tags.Text(8, layer);
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

    private void Place(Point at) => tags.Place(10, InUnits(at.X), InUnits(at.Y));

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
