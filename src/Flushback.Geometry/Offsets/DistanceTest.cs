using Flushback.Geometry.Chains;
using Flushback.Geometry.Distances;

namespace Flushback.Geometry.Offsets;

/// <summary>The border of an offset lies the distance away from the original border, and no point of it nearer.</summary>
internal sealed class DistanceTest(BoxTree original, double distanceMm, OffsetTolerances tolerances) : IBorderTest
{
    private readonly double _leastMm = Math.Abs(distanceMm) - tolerances.NearerMm;

    /// <summary>False only for a curve that comes too near the original everywhere.</summary>
    /// <remarks>No point of it is farther from its middle than half its length, so neither is its distance.</remarks>
    public bool MayReachBorder(in Edge curve) => DistanceTo(curve.PointAt(0.5)) + (curve.LengthMm / 2) >= _leastMm;

    /// <inheritdoc/>
    public bool MayBeOnBorder(Point middle) => DistanceTo(middle) >= _leastMm;

    /// <inheritdoc/>
    public bool MustBeOnBorder(Point middle, Vector outwardNormal)
    {
        // Away from the original the distance grows, unless another part of it is about as near.
        double stepMm = Math.CopySign(tolerances.ThinMm, distanceMm);
        return DistanceTo(middle + (outwardNormal * stepMm)) >= Math.Abs(distanceMm) + (tolerances.ThinMm / 2);
    }

    private double DistanceTo(Point p) => OutlineDistance.Between(p, original).DistanceMm;
}
