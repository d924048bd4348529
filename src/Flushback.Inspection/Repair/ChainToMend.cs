using System.Collections.Immutable;
using Flushback.Dxf.Chaining;
using Flushback.Geometry;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Repair;

/// <summary>A contour or an open chain, with the entity that each edge comes from.</summary>
/// <param name="Layer">The layer it lies on.</param>
/// <param name="Edges">Its edges, in order.</param>
/// <param name="EdgeHandles">Handle (or place) of the entity of each edge.</param>
/// <param name="IsClosed">True for a contour.</param>
/// <param name="Circle">The circle, when it is one.</param>
internal sealed record ChainToMend(
    string Layer,
    ImmutableArray<Edge> Edges,
    ImmutableArray<string> EdgeHandles,
    bool IsClosed,
    Circle? Circle
)
{
    public static ChainToMend Of(CutContour contour) =>
        contour.Circle is null
            ? new(contour.Layer, contour.Outline.Edges, contour.EdgeHandles, IsClosed: true, Circle: null)
            // Of a circle only which entities it is made of matters.
            : new(
                contour.Layer,
                [.. Enumerable.Repeat(contour.Outline.Edges[0], contour.Handles.Length)],
                contour.Handles,
                IsClosed: true,
                contour.Circle
            );

    public static ChainToMend Of(string layer, OpenPath path) =>
        new(layer, path.Edges, path.EdgeHandles, IsClosed: false, Circle: null);
}
