using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Distances;

namespace Flushback.Inspection.Contours;

/// <summary>Finds contours that are drawn on two cut layers and would be cut twice.</summary>
internal static class CopiesAcrossLayers
{
    /// <summary>Pairs of contour and copy, by index, the earlier one first.</summary>
    public static ImmutableArray<(int Original, int Copy)> In(ImmutableArray<CutContour> contours, double toleranceMm)
    {
        ImmutableArray<Box> corners = [.. contours.Select(contour => CornerOf(contour.Outline.Bounds, toleranceMm))];
        BoxIndex index = new(corners);
        HashSet<int> copies = [];
        List<(int, int)> found = [];
        foreach ((int lower, int higher) in index.Pairs())
        {
            if (
                !copies.Contains(lower)
                && !copies.Contains(higher)
                && AreCopies(contours[lower].Outline, contours[higher].Outline, toleranceMm)
            )
            {
                copies.Add(higher);
                found.Add((lower, higher));
            }
        }

        return [.. found];
    }

    /// <summary>A box about the lower left corner alone: copies share it, and hardly anything else does.</summary>
    private static Box CornerOf(Box box, double toleranceMm) =>
        Box.Empty.Including(new Point(box.MinX, box.MinY)).Grown(toleranceMm / 2);

    private static bool AreCopies(Outline one, Outline other, double toleranceMm) =>
        Math.Abs(one.AreaMm2 - other.AreaMm2) <= toleranceMm * one.PerimeterMm
        && LiesOn(one, other, toleranceMm)
        && LiesOn(other, one, toleranceMm);

    private static bool LiesOn(Outline one, Outline other, double toleranceMm) =>
        one.Edges.All(edge =>
            Distance.Between(edge.Start, other).DistanceMm <= toleranceMm
            && Distance.Between(edge.PointAt(0.5), other).DistanceMm <= toleranceMm
        );
}
