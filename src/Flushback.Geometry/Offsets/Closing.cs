using System.Collections.Immutable;

namespace Flushback.Geometry.Offsets;

/// <summary>What a disc that stays outside an area cannot reach: the area offset outward by the radius and inward again.</summary>
/// <remarks>
/// Every corner that points in becomes an arc of the radius, and bays narrower than its diameter are filled. Nothing is
/// taken away anywhere. Edges that gain nothing keep their coordinates to the last digit, and so does a whole outline.
/// </remarks>
public static class Closing
{
    /// <summary>The closing of the inside of an outline.</summary>
    /// <inheritdoc cref="Of(Region, double, CancellationToken)"/>
    /// <param name="outline">An outline that <c>OutlineCheck</c> finds sound, travelled either way.</param>
    /// <param name="radiusMm">Radius of the disc, not negative.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    public static ImmutableArray<Region> Of(
        Outline outline,
        double radiusMm,
        CancellationToken cancellation = default
    ) => Of(new Region(outline), radiusMm, cancellation);

    /// <summary>The closing of an area with holes: those the disc does not fit into are filled.</summary>
    /// <param name="region">A region of sound outlines, holes inside the border and apart.</param>
    /// <param name="radiusMm">Radius of the disc, not negative.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <returns>The area that results: one region, since nothing comes apart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The radius is negative or not a finite number.</exception>
    /// <exception cref="OperationCanceledException">Cancellation was asked for.</exception>
    public static ImmutableArray<Region> Of(Region region, double radiusMm, CancellationToken cancellation = default)
    {
        ThereAndBack.RequireRadius(radiusMm);
        return ThereAndBack.Of(region, radiusMm, cancellation);
    }
}
