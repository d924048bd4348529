using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;

namespace Flushback.Inspection.Contours;

/// <summary>What the cut layers hold once their entities are joined, in the order of the file.</summary>
/// <param name="Closed">The closed contours and circles.</param>
/// <param name="Open">The chains that do not close.</param>
/// <param name="Issues">What was said while joining.</param>
internal sealed record DrawnContours(
    ImmutableArray<CutContour> Closed,
    ImmutableArray<(string Layer, OpenPath Path)> Open,
    ImmutableArray<DxfIssue> Issues
)
{
    public static DrawnContours Of(
        DxfDrawing drawing,
        ImmutableArray<string> layers,
        double joinToleranceMm,
        EntityOrder order,
        CancellationToken ct
    )
    {
        List<CutContour> closed = [];
        List<(string Layer, OpenPath Path)> open = [];
        List<DxfIssue> issues = [];
        foreach (string layer in layers)
        {
            ct.ThrowIfCancellationRequested();
            ChainResult chained = DxfContours.ContoursOf(drawing, layer, joinToleranceMm, ct);
            closed.AddRange(chained.Contours.Select(found => ClosedOf(layer, found, order)));
            closed.AddRange(chained.Circles.Select(found => ClosedOf(layer, found, order)));
            open.AddRange(chained.OpenPaths.Select(path => (layer, path)));
            issues.AddRange(chained.Issues);
        }

        return new DrawnContours(
            [.. closed.OrderBy(contour => contour.Order)],
            [.. open.OrderBy(entry => order.Of(entry.Path.Handles))],
            [.. issues]
        );
    }

    private static CutContour ClosedOf(string layer, Contour found, EntityOrder order)
    {
        bool isTurned = !found.Outline.IsCounterClockwise;
        return new CutContour(
            layer,
            found.Outline.CounterClockwise(),
            null,
            found.Handles,
            isTurned ? [.. found.EdgeHandles.Reverse()] : found.EdgeHandles,
            order.Of(found.Handles)
        );
    }

    private static CutContour ClosedOf(string layer, CircleShape found, EntityOrder order) =>
        new(
            layer,
            CutContour.OutlineOf(found.Circle),
            found.Circle,
            found.Handles,
            [found.Handles[0], found.Handles[^1]],
            order.Of(found.Handles)
        );
}
