using System.Collections.Immutable;
using Flushback.Geometry.Chains;
using Flushback.Geometry.Distances;

namespace Flushback.Geometry.Offsets;

/// <summary>Where a round cutter that must not touch a part leaves metal on it.</summary>
public static class CutterReach
{
    private const int PointsAlongEdge = 16;

    /// <summary>Halvings of the step that leave less than a nanometre of an edge of several metres.</summary>
    private const int Halvings = 32;

    /// <summary>The places a cutter cannot clear: corners and arcs inside sharper than it, bays and holes it does not fit in.</summary>
    /// <remarks>
    /// A cutter that goes round outside the part, and round inside each hole, clears all but the part's closing by its
    /// radius. A place is what the closing has beyond the part, the largest first.
    /// </remarks>
    /// <param name="part">The part, of sound outlines.</param>
    /// <param name="cutterRadiusMm">Radius of the cutter, or half the width of the kerf; not negative.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <exception cref="ArgumentOutOfRangeException">The radius is negative or not a finite number.</exception>
    /// <exception cref="OperationCanceledException">Cancellation was asked for.</exception>
    public static ImmutableArray<UnreachedPlace> UnreachedBy(
        Region part,
        double cutterRadiusMm,
        CancellationToken cancellation = default
    )
    {
        ImmutableArray<Region> closed = Closing.Of(part, cutterRadiusMm, cancellation);
        BoxTree path = new([
            .. Offset
                .Of(part, cutterRadiusMm, cancellation)
                .SelectMany(region => region.Outlines)
                .SelectMany(outline => outline.Edges),
        ]);
        return
        [
            .. NestedDifference.Of(closed, [part], cancellation).Select(metal => PlaceOf(metal, path, cutterRadiusMm)),
        ];
    }

    private static UnreachedPlace PlaceOf(Region metal, BoxTree path, double cutterRadiusMm)
    {
        (Point at, double farthestMm) = metal
            .Outlines.SelectMany(outline => outline.Edges)
            .Select(edge => FarthestOn(edge, path))
            .MaxBy(found => found.DistanceMm);
        return new UnreachedPlace(metal, at, farthestMm - cutterRadiusMm);
    }

    /// <summary>The point of an edge farthest from the path: of a few along it the best, then ever nearer to either side.</summary>
    private static (Point At, double DistanceMm) FarthestOn(Edge edge, BoxTree path)
    {
        double step = 1.0 / PointsAlongEdge;
        double best = Enumerable.Range(0, PointsAlongEdge + 1).Select(i => i * step).MaxBy(DistanceAt);
        for (int i = 0; i < Halvings; i++)
        {
            step /= 2;
            double[] aside = [best, Math.Max(0, best - step), Math.Min(1, best + step)];
            best = aside.MaxBy(DistanceAt);
        }

        return (edge.PointAt(best), DistanceAt(best));

        double DistanceAt(double fraction) => OutlineDistance.Between(edge.PointAt(fraction), path).DistanceMm;
    }
}
