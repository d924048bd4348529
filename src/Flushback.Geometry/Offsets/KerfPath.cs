using System.Collections.Immutable;

namespace Flushback.Geometry.Offsets;

/// <summary>Where the middle of a kerf has to run so that a part comes out to size, and what it cannot cut.</summary>
/// <param name="Paths">
/// The lines to cut: the border of each region round the outside of the part, its holes round the inside of the part's
/// holes. More than one region is never needed; a bay with a mouth narrower than the kerf makes a hole of its own, which
/// falls out as a separate piece.
/// </param>
/// <param name="Unreached">Where the kerf leaves metal that the part does not have, the largest place first.</param>
public sealed record KerfPath(ImmutableArray<Region> Paths, ImmutableArray<UnreachedPlace> Unreached)
{
    /// <summary>Area of all metal the kerf leaves on the part, in square millimetres.</summary>
    public double UnreachedAreaMm2 => Unreached.Sum(place => place.AreaMm2);

    /// <summary>The path that keeps half a kerf outside the part.</summary>
    /// <param name="part">The part, of sound outlines.</param>
    /// <param name="kerfMm">Width of the kerf, or diameter of the cutter, in millimetres; not negative.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <exception cref="ArgumentOutOfRangeException">The kerf is negative or not a finite number.</exception>
    /// <exception cref="OperationCanceledException">Cancellation was asked for.</exception>
    public static KerfPath Around(Region part, double kerfMm, CancellationToken cancellation = default)
    {
        if (!(kerfMm >= 0) || !double.IsFinite(kerfMm))
        {
            throw new ArgumentOutOfRangeException(nameof(kerfMm), kerfMm, "The kerf must be finite, not negative.");
        }

        return new KerfPath(
            Offset.Of(part, kerfMm / 2, cancellation),
            CutterReach.UnreachedBy(part, kerfMm / 2, cancellation)
        );
    }
}
