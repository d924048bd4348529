using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Geometry;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Segments so short that a controller stutters on them.</summary>
internal static class ShortEdges
{
    public static IEnumerable<InspectionFinding> Of(IEnumerable<DxfShape> shapes, double limitMm)
    {
        List<DxfShape> run = [];
        // What a spline or an ellipse became is for whoever converts it; that it is one is told anyway.
        foreach (DxfShape shape in shapes.Where(shape => !FittedCurves.IsOne(shape)))
        {
            bool isShortPiece = EdgesOf(shape.Geometry) is [var edge] && IsShort(edge, limitMm);
            if (run.Count > 0 && !(isShortPiece && GoesOn(run[^1], shape)))
            {
                yield return RunOf(run, limitMm);
                run.Clear();
            }

            if (isShortPiece)
            {
                run.Add(shape);
            }
            else if (FindingOf(shape, limitMm) is { } finding)
            {
                yield return finding;
            }
        }

        if (run.Count > 0)
        {
            yield return RunOf(run, limitMm);
        }
    }

    private static bool IsShort(Edge edge, double limitMm) => edge.LengthMm < limitMm - CutTolerances.TouchingMm;

    /// <summary>True when a short piece goes on where the one before it in the file ends, whichever way they were drawn.</summary>
    private static bool GoesOn(DxfShape before, DxfShape next)
    {
        Edge a = EdgesOf(before.Geometry)[0];
        Edge b = EdgesOf(next.Geometry)[0];
        return string.Equals(before.Layer, next.Layer, StringComparison.OrdinalIgnoreCase)
            && (Touch(a.End, b.Start) || Touch(a.End, b.End) || Touch(a.Start, b.End) || Touch(a.Start, b.Start));
    }

    private static bool Touch(Point one, Point other) => one.IsWithin(CutTolerances.TouchingMm, other);

    /// <summary>One finding for short pieces in a row: it is one stretch to draw again.</summary>
    private static InspectionFinding RunOf(List<DxfShape> run, double limitMm)
    {
        if (run is [var alone])
        {
            return FindingOf(alone, limitMm)!;
        }

        Edge shortest = run.Select(shape => EdgesOf(shape.Geometry)[0]).MinBy(edge => edge.LengthMm);
        return Finding(
            $"{Said.Whole(run.Count)} pieces in a row on layer {run[0].Layer}, {run[0].Label} to {run[^1].Label}, are shorter than "
                + $"{Said.Length(limitMm)}, the shortest of {Said.Length(shortest.LengthMm)}",
            [.. run.Select(EntityOrder.NameOf)],
            run[0].Layer,
            shortest,
            limitMm
        );
    }

    private static InspectionFinding? FindingOf(DxfShape shape, double limitMm)
    {
        ImmutableArray<Edge> edges = EdgesOf(shape.Geometry);
        int count = 0;
        Edge shortest = default;
        double least = limitMm;
        foreach (Edge edge in edges)
        {
            double length = edge.LengthMm;
            count += IsShort(edge, limitMm) ? 1 : 0;
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
        return Finding(which, [EntityOrder.NameOf(shape)], shape.Layer, shortest, limitMm);
    }

    private static InspectionFinding Finding(
        string which,
        ImmutableArray<string> names,
        string layer,
        Edge shortest,
        double limitMm
    ) =>
        new(
            InspectionCodes.MicroSegment,
            Severity.Warning,
            $"{which}, at {Said.At(shortest.Start)}.",
            "Draw that stretch again with fewer lines or with arcs: the machine slows down at every one of them.",
            names,
            layer,
            shortest.Start,
            shortest.LengthMm,
            limitMm,
            "mm"
        );

    private static ImmutableArray<Edge> EdgesOf(ShapeGeometry geometry) =>
        geometry switch
        {
            OpenChain chain => chain.Edges,
            ClosedOutline closed => closed.Outline.Edges,
            _ => [],
        };
}
