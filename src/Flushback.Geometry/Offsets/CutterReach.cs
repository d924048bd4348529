using System.Collections.Immutable;
using Flushback.Geometry.Chains;
using Flushback.Geometry.Distances;

namespace Flushback.Geometry.Offsets;

/// <summary>Where a round cutter that must not touch a part leaves metal on it.</summary>
public static class CutterReach
{
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
        (Point at, double farthestMm) = (default, double.NegativeInfinity);
        foreach (
            Point p in metal.Outlines.SelectMany(outline => outline.Edges).SelectMany(edge => FarPoints(edge, path))
        )
        {
            double distanceMm = OutlineDistance.Between(p, path).DistanceMm;
            (at, farthestMm) = distanceMm > farthestMm ? (p, distanceMm) : (at, farthestMm);
        }

        return new UnreachedPlace(metal, at, farthestMm - cutterRadiusMm);
    }

    /// <summary>Where an edge can lie farthest from the path: its ends, and of an arc the point away from the path's nearest.</summary>
    private static IEnumerable<Point> FarPoints(Edge edge, BoxTree path)
    {
        yield return edge.Start;
        if (!edge.IsArc)
        {
            yield break;
        }

        Point middle = edge.PointAt(0.5);
        yield return middle;
        Vector away = edge.Centre - OutlineDistance.Between(middle, path).OnSecond;
        if (away.Length > 0 && edge.SpansDirection(away))
        {
            yield return edge.Centre + (away.Normalized * edge.RadiusMm);
        }
    }
}
