using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Contours;

/// <summary>A closed contour on a cut layer.</summary>
/// <param name="Layer">The layer, as the file spells it.</param>
/// <param name="Outline">The contour, counter-clockwise; a circle as two arcs.</param>
/// <param name="Circle">The circle, when it is one.</param>
/// <param name="Handles">Handles (or places) of its entities.</param>
/// <param name="EdgeHandles">The same for each edge of the outline.</param>
/// <param name="Order">Which shape of the drawing its first entity is.</param>
internal sealed record CutContour(
    string Layer,
    Outline Outline,
    Circle? Circle,
    ImmutableArray<string> Handles,
    ImmutableArray<string> EdgeHandles,
    int Order
)
{
    /// <summary>How a sentence names it.</summary>
    public string Label =>
        Circle is null
            ? $"the contour of {Said.Entities(Handles)} on layer {Layer}"
            : $"the circle of {Said.Entities(Handles)} on layer {Layer}";

    /// <summary>The contour as the border of what lies within it.</summary>
    public BorderLoop AroundInside => new(this, Outline, EdgeHandles);

    /// <summary>A circle as an outline of two half circles.</summary>
    public static Outline OutlineOf(Circle circle)
    {
        Vector radius = new(circle.RadiusMm, 0);
        return Outline.FromVertices([new Vertex(circle.Centre + radius, 1), new Vertex(circle.Centre - radius, 1)]);
    }
}
