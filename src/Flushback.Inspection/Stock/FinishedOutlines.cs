using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Geometry;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Stock;

/// <summary>The finished outlines that lie on a layer of their own beside the ones to cut.</summary>
internal sealed class FinishedOutlines
{
    private readonly ImmutableArray<CutContour> _outer;

    public FinishedOutlines(
        DxfDrawing drawing,
        string layer,
        double joinToleranceMm,
        EntityOrder order,
        CancellationToken ct
    )
    {
        DrawnContours drawn = DrawnContours.Of(drawing, [layer], joinToleranceMm, order, ct);
        NestedContours nested = new(drawn.Closed, ct);
        _outer = [.. nested.Outer.Where(i => nested.ParentOf(i) < 0).Select(i => drawn.Closed[i])];
    }

    /// <summary>True when the layer holds no closed contour.</summary>
    public bool IsEmpty => _outer.IsEmpty;

    /// <summary>For each part, by its number, the finished outlines that belong to it.</summary>
    public ILookup<int, CutContour> ByPart(ImmutableArray<MetalPart> parts) =>
        _outer
            .Select(finished => (Finished: finished, Part: PartOf(finished, parts)))
            .Where(pair => pair.Part >= 0)
            .ToLookup(pair => pair.Part, pair => pair.Finished);

    /// <summary>The part whose outer contour shares the most of its box with a finished outline; -1 when none shares any.</summary>
    private static int PartOf(CutContour finished, ImmutableArray<MetalPart> parts)
    {
        Box box = finished.Outline.Bounds;
        (int part, double best) = (-1, 0);
        for (int i = 0; i < parts.Length; i++)
        {
            // The share of both boxes together, so that a small finished part does not belong to whatever surrounds it.
            Box outer = parts[i].Outer.Outline.Bounds;
            double common =
                Math.Max(0, Math.Min(box.MaxX, outer.MaxX) - Math.Max(box.MinX, outer.MinX))
                * Math.Max(0, Math.Min(box.MaxY, outer.MaxY) - Math.Max(box.MinY, outer.MinY));
            double share = common / (AreaOf(box) + AreaOf(outer) - common);
            (part, best) = share > best ? (i, share) : (part, best);
        }

        return part;
    }

    private static double AreaOf(Box box) => box.WidthMm * box.HeightMm;
}
