using Flushback.Dxf.Drawings;
using Flushback.Geometry;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Repair;

/// <summary>Finds the shapes of a drawing by what contours and issues know of them.</summary>
internal sealed class ShapeLookup
{
    private readonly ILookup<string, DxfShape> _byName;
    private readonly ILookup<int, DxfShape> _byLine;

    public ShapeLookup(DxfDrawing drawing)
    {
        _byName = drawing.Shapes.ToLookup(EntityOrder.NameOf, StringComparer.Ordinal);
        _byLine = drawing.Shapes.ToLookup(shape => shape.Line);
    }

    /// <summary>The shape that begins at a line of the file; null when none does, or several do because it stands in a block.</summary>
    public DxfShape? At(int? line)
    {
        DxfShape[] shapes = [.. line is { } known ? _byLine[known] : []];
        return shapes.Length == 1 ? shapes[0] : null;
    }

    /// <summary>The shape of a name whose drawn place is nearest to an edge that came from it.</summary>
    public DxfShape Named(string name, in Edge edge)
    {
        DxfShape[] shapes = [.. _byName[name]];
        if (shapes.Length == 1)
        {
            return shapes[0];
        }

        // Copies of a block share their name, and some files give one handle twice.
        Point at = edge.PointAt(0.5);
        return shapes.MinBy(shape => DrawnEdges.Of(shape).Min(drawn => drawn.PointAt(0.5).DistanceTo(at)))!;
    }
}
