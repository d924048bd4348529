using System.Collections.Immutable;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Stock;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Stock that is left for grinding after heat treatment, where the drawing holds the finished outlines too.</summary>
internal static class StockFindings
{
    /// <summary>The least stock of a part; null when no finished outline belongs to it.</summary>
    public static StockMeasure? LeastOf(MetalPart part, IEnumerable<CutContour> finished) =>
        finished
            .Select(outline => GrindingStock.Least(part.Outer.Outline, outline.Outline))
            .MinBy(stock => stock.LeastMm);

    /// <summary>What is wrong with it; null when nothing is.</summary>
    public static InspectionFinding? Of(MetalPart part, StockMeasure stock, double? wantedMm)
    {
        double wanted = wantedMm ?? 0;
        if (stock.LeastMm >= wanted - CutTolerances.TouchingMm)
        {
            return null;
        }

        bool isInside = stock.LeastMm < -CutTolerances.TouchingMm;
        return new InspectionFinding(
            InspectionCodes.Stock,
            isInside ? Severity.Fault : Severity.Warning,
            isInside
                ? $"{Sentence.Begin(part.Outer.Label)} runs {Said.Length(-stock.LeastMm)} inside the finished outline at {Said.At(stock.At)}."
                : $"{Sentence.Begin(part.Outer.Label)} leaves {Said.Length(stock.LeastMm)} of stock on the finished outline at {Said.At(stock.At)}, "
                    + $"where {Said.Length(wanted)} is wanted.",
            "Move the contour outward there: what is cut away cannot be ground true after hardening.",
            part.Outer.Handles,
            part.Outer.Layer,
            stock.At,
            stock.LeastMm,
            wanted,
            "mm"
        );
    }

    /// <summary>That the named layer holds no finished outline.</summary>
    public static InspectionFinding NothingFinished(string layer) =>
        new(
            InspectionCodes.Stock,
            Severity.Warning,
            $"Layer {layer}, named for the finished outlines, holds no closed contour, so no stock was measured.",
            "Check the name of the layer, and that its outlines close.",
            ImmutableArray<string>.Empty,
            layer
        );
}
