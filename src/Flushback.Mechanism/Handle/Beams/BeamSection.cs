namespace Flushback.Mechanism.Handle.Beams;

/// <summary>A cut through the spring square to its centreline: a rectangle, less the hole of a pin where one is met.</summary>
/// <remarks>
/// All measures are for one millimetre of width, since everything here is linear in the width. Heights count from half
/// depth towards the back. The hole runs through the width, so that it leaves a strip above and one below it; both bend
/// about their common centroid (parallel-axis theorem, elementary).
/// </remarks>
/// <param name="DepthMm">From underside to back.</param>
/// <param name="HoleMm">How much of the depth the hole takes; 0 beside the holes.</param>
/// <param name="HoleHeightMm">Height of the hole's middle over half depth.</param>
public readonly record struct BeamSection(double DepthMm, double HoleMm = 0, double HoleHeightMm = 0)
{
    /// <summary>Metal over the hole; without a hole half the depth.</summary>
    public double OverHoleMm => (DepthMm / 2) - HoleHeightMm - (HoleMm / 2);

    /// <summary>Metal under the hole; without a hole half the depth.</summary>
    public double UnderHoleMm => (DepthMm / 2) + HoleHeightMm - (HoleMm / 2);

    /// <summary>Height of the centroid over half depth.</summary>
    public double CentroidMm => HoleMm == 0 ? 0 : -HoleMm * HoleHeightMm / (DepthMm - HoleMm);

    /// <summary>Second moment of area for one millimetre of width, in cubic millimetres.</summary>
    public double SecondMomentMm3
    {
        get
        {
            double whole = DepthMm * DepthMm * DepthMm / 12;
            if (HoleMm == 0)
            {
                return whole;
            }

            double centroid = CentroidMm;
            double toHole = HoleHeightMm - centroid;
            return whole
                + (DepthMm * centroid * centroid)
                - (HoleMm * HoleMm * HoleMm / 12)
                - (HoleMm * toHole * toHole);
        }
    }

    /// <summary>Least section modulus for one millimetre of width, in square millimetres: where the stress is greatest.</summary>
    public double LeastModulusMm2 => SecondMomentMm3 / ((DepthMm / 2) + Math.Abs(CentroidMm));
}
