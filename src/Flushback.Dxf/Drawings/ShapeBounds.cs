using Flushback.Geometry;

namespace Flushback.Dxf.Drawings;

/// <summary>Boxes around shapes.</summary>
internal static class ShapeBounds
{
    public static Box Of(IEnumerable<DxfShape> shapes) =>
        shapes.Aggregate(Box.Empty, (box, shape) => box.Including(Of(shape.Geometry)));

    public static Box Of(ShapeGeometry geometry) =>
        geometry switch
        {
            OpenChain chain => Of(chain.Edges.AsSpan()),
            ClosedOutline closed => closed.Outline.Bounds,
            FullCircle { Circle: var circle } => Box.Empty.Including(circle.Centre).Grown(circle.RadiusMm),
            _ => Box.Empty,
        };

    private static Box Of(ReadOnlySpan<Edge> edges)
    {
        Box box = Box.Empty;
        foreach (Edge edge in edges)
        {
            box = box.Including(edge.Bounds);
        }

        return box;
    }
}
