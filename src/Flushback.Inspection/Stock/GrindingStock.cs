using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Stock;

/// <summary>The stock between a contour that is cut and the finished outline within it.</summary>
internal static class GrindingStock
{
    /// <summary>The least stock, negative where the finished outline lies outside the cut one.</summary>
    /// <remarks>
    /// Exact while the finished outline lies inside. Where it does not, what counts is how far it comes out at most, good to
    /// <see cref="FarthestOutside.ToleranceMm"/>.
    /// </remarks>
    public static StockMeasure Least(Outline cut, Outline finished)
    {
        Nearest nearest = Distance.Between(cut, finished);
        bool isInside = nearest.DistanceMm > CutTolerances.TouchingMm && cut.Contains(finished.Edges[0].PointAt(0.5));
        if (isInside)
        {
            return new StockMeasure(nearest.DistanceMm, nearest.OnSecond);
        }

        (double outside, Point at) = FarthestOutside.Of(finished, cut);
        return outside > CutTolerances.TouchingMm
            ? new StockMeasure(-outside, at)
            : new StockMeasure(0, nearest.OnSecond);
    }
}
