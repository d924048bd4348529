using System.Collections.Immutable;

namespace Flushback.Geometry.Offsets;

/// <summary>What a disc that stays inside an area can cover: the area offset inward by the radius and outward again.</summary>
/// <remarks>
/// Every corner that points out becomes an arc of the radius, and tongues narrower than its diameter go. Nothing is added
/// anywhere. Edges that lose nothing keep their coordinates to the last digit, and so does a whole outline.
/// </remarks>
public static class Opening
{
    /// <summary>The opening of the inside of an outline.</summary>
    /// <inheritdoc cref="Of(Region, double, CancellationToken)"/>
    /// <param name="outline">An outline that <c>OutlineCheck</c> finds sound, travelled either way.</param>
    /// <param name="radiusMm">Radius of the disc, not negative.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    public static ImmutableArray<Region> Of(
        Outline outline,
        double radiusMm,
        CancellationToken cancellation = default
    ) => Of(new Region(outline), radiusMm, cancellation);

    /// <summary>The opening of an area with holes: they become larger where metal between two of them is thin.</summary>
    /// <param name="region">A region of sound outlines, holes inside the border and apart.</param>
    /// <param name="radiusMm">Radius of the disc, not negative.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <returns>The areas that result, the largest first; none when the disc fits nowhere.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The radius is negative or not a finite number.</exception>
    /// <exception cref="OperationCanceledException">Cancellation was asked for.</exception>
    public static ImmutableArray<Region> Of(Region region, double radiusMm, CancellationToken cancellation = default)
    {
        ThereAndBack.RequireRadius(radiusMm);
        return ThereAndBack.Of(region, -radiusMm, cancellation);
    }
}
