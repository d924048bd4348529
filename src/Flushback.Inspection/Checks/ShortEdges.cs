using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Geometry;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Segments so short that a controller stutters on them.</summary>
internal static class ShortEdges
{
    public static IEnumerable<InspectionFinding> Of(IEnumerable<DxfShape> shapes, double limitMm) =>
        // What a spline or an ellipse became is for whoever converts it; that it is one is told anyway.
        shapes
            .Where(shape => !FittedCurves.IsOne(shape))
            .Select(shape => FindingOf(shape, limitMm))
            .OfType<InspectionFinding>();

    private static InspectionFinding? FindingOf(DxfShape shape, double limitMm)
    {
        ImmutableArray<Edge> edges = EdgesOf(shape.Geometry);
        int count = 0;
        Edge shortest = default;
        double least = limitMm;
        foreach (Edge edge in edges)
        {
            double length = edge.LengthMm;
            count += length < limitMm - CutTolerances.TouchingMm ? 1 : 0;
            (shortest, least) = length < least ? (edge, length) : (shortest, least);
        }

        if (count == 0)
        {
            return null;
        }

        string which =
            edges.Length == 1
                ? $"{shape.Label} on layer {shape.Layer} is only {Said.Length(least)} long"
                : $"{shape.Label} on layer {shape.Layer} has {Said.Count(count, "segment", "segments")} shorter than {Said.Length(limitMm)}, "
                    + $"the shortest of {Said.Length(least)}";
        return new InspectionFinding(
            InspectionCodes.MicroSegment,
            Severity.Warning,
            $"{which}, at {Said.At(shortest.Start)}.",
            "Draw that stretch again with fewer lines or with arcs: the machine slows down at every one of them.",
            [EntityOrder.NameOf(shape)],
            shape.Layer,
            shortest.Start,
            least,
            limitMm,
            "mm"
        );
    }

    private static ImmutableArray<Edge> EdgesOf(ShapeGeometry geometry) =>
        geometry switch
        {
            OpenChain chain => chain.Edges,
            ClosedOutline closed => closed.Outline.Edges,
            _ => [],
        };
}
