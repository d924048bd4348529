using System.Collections.Immutable;

namespace Flushback.Inspection.Contours;

/// <summary>One piece of metal: an outer contour and what is cut out of it.</summary>
/// <param name="Outer">The outer contour.</param>
/// <param name="Holes">The holes, in the order of the file.</param>
/// <param name="IsSound">False when a contour crosses itself or another: what is metal cannot be told then.</param>
internal sealed record MetalPart(CutContour Outer, ImmutableArray<CutContour> Holes, bool IsSound)
{
    /// <summary>The outer contour and the holes.</summary>
    public IEnumerable<CutContour> Contours => Holes.Prepend(Outer);

    /// <summary>All contours travelled with the metal on their left, in the order of <see cref="Contours"/>.</summary>
    public ImmutableArray<BorderLoop> Loops =>
        [Outer.AroundInside, .. Holes.Select(hole => hole.AroundInside.Reversed())];

    /// <summary>The parts of a drawing, in the order of the file.</summary>
    public static ImmutableArray<MetalPart> Of(NestedContours nested, IReadOnlySet<int> faulty)
    {
        ILookup<int, int> holes = nested.Holes;
        return
        [
            .. nested.Outer.Select(outer => new MetalPart(
                nested.Contours[outer],
                [.. holes[outer].Select(hole => nested.Contours[hole])],
                !faulty.Contains(outer) && !holes[outer].Any(faulty.Contains)
            )),
        ];
    }
}
