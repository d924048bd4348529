using System.Collections.Immutable;

namespace Flushback.Geometry.Offsets;

/// <summary>An offset and the opposite one after it, laid back onto the original where the two agree.</summary>
internal static class ThereAndBack
{
    public static void RequireRadius(double radiusMm)
    {
        if (!(radiusMm >= 0) || !double.IsFinite(radiusMm))
        {
            throw new ArgumentOutOfRangeException(
                nameof(radiusMm),
                radiusMm,
                "The radius must be a finite number, not negative."
            );
        }
    }

    /// <summary>The region offset by a distance and back by the same.</summary>
    public static ImmutableArray<Region> Of(Region region, double distanceMm, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(region);
        ImmutableArray<Region> there = Offset.Of(region, distanceMm, cancellation);
        ImmutableArray<Region> back = Offset.Of(there, -distanceMm, cancellation);
        OriginalBorder original = new(region);
        return [.. back.Select(original.LaidBack)];
    }
}
