using System.Collections.Immutable;
using Flushback.Geometry.Distances;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Widths;

/// <summary>Puts narrow places together that are one to whoever looks at the part.</summary>
internal static class NarrowPlaces
{
    /// <summary>The narrowest of every group of places that lie within a distance of each other, narrowest first.</summary>
    public static ImmutableArray<Width> OnceEach(ImmutableArray<Width> widths, double withinMm)
    {
        BoxIndex index = new([.. widths.Select(width => width.Extent.Bounds.Grown(withinMm / 2))]);
        int[] group = [.. Enumerable.Range(0, widths.Length)];
        foreach ((int lower, int higher) in index.Pairs())
        {
            (int one, int other) = (Root(group, lower), Root(group, higher));
            if (one != other && Distance.Between(widths[lower].Extent, widths[higher].Extent).DistanceMm <= withinMm)
            {
                group[Math.Max(one, other)] = Math.Min(one, other);
            }
        }

        return
        [
            .. Enumerable
                .Range(0, widths.Length)
                .GroupBy(i => Root(group, i), i => widths[i])
                .Select(places => places.MinBy(place => (place.Mm, place.Middle.X, place.Middle.Y)))
                .OrderBy(place => (place.Mm, place.Middle.X, place.Middle.Y)),
        ];
    }

    private static int Root(int[] group, int i)
    {
        while (group[i] != i)
        {
            i = group[i] = group[group[i]];
        }

        return i;
    }
}
