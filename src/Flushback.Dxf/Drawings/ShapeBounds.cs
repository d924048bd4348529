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
            OpenChain chain => chain.Edges.Aggregate(Box.Empty, (box, edge) => box.Including(edge.Bounds)),
            ClosedOutline closed => closed.Outline.Bounds,
            FullCircle { Circle: var circle } => Box.Empty.Including(circle.Centre).Grown(circle.RadiusMm),
            _ => Box.Empty,
        };
}
