using System.Collections.Immutable;
using Flushback.Geometry.Checking;

namespace Flushback.Geometry.Offsets;

/// <summary>What one area has beyond others that lie within it.</summary>
public static class NestedDifference
{
    /// <summary>The parts of some regions that lie in none of others, which all lie inside them and may share borders.</summary>
    /// <param name="outer">Regions apart from one another.</param>
    /// <param name="inner">Regions apart from one another, none of which reaches out of <paramref name="outer"/>.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <returns>The parts, the largest first; slivers thinner than a ten-thousandth of a millimetre are left out.</returns>
    public static ImmutableArray<Region> Of(
        ImmutableArray<Region> outer,
        ImmutableArray<Region> inner,
        CancellationToken cancellation = default
    )
    {
        // Shared borders are then there in both directions and cancel. What lies left of the rest is the difference.
        ImmutableArray<Edge> curves =
        [
            .. outer.SelectMany(region => region.Outlines).SelectMany(outline => outline.Edges),
            .. inner.SelectMany(region => region.Outlines).SelectMany(outline => outline.Reversed().Edges),
        ];
        Box box = curves.Aggregate(Box.Empty, (all, edge) => all.Including(edge.Bounds));
        return
        [
            .. Arrangement
                .RegionsLeftOf(curves, new EveryPiece(), OffsetTolerances.For(box), cancellation)
                .Where(region => 2 * region.AreaMm2 > GeometryTolerances.Default.NoWidthMm * region.PerimeterMm),
        ];
    }

    private sealed class EveryPiece : IBorderTest
    {
        public bool MayBeOnBorder(Point middle) => true;

        // Where two borders come within the tolerance of one another some pieces may pair with none.
        public bool MustBeOnBorder(Point middle, Vector outwardNormal) => false;
    }
}
