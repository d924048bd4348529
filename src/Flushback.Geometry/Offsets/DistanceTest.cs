using Flushback.Geometry.Chains;
using Flushback.Geometry.Distances;

namespace Flushback.Geometry.Offsets;

/// <summary>The border of an offset lies the distance away from the original border, and no point of it nearer.</summary>
internal sealed class DistanceTest(BoxTree original, double distanceMm, OffsetTolerances tolerances) : IBorderTest
{
    private const int MostSteps = 32;
    private const double ShortestStep = 0.01;
    private const double Margin = 0.01;
    private const double WorthKeepingWhole = 0.7;

    private readonly double _leastMm = Math.Abs(distanceMm) - tolerances.NearerMm;

    /// <summary>The part of a curve that may reach the border; null when none does.</summary>
    /// <remarks>
    /// A point that is too near the original by some length rules out that length of the curve to either side of it, since
    /// distances change no faster than that. Where many parallels crowd together, as in the middle of a round part, this
    /// leaves a little of each to be cut by the others. A curve that would lose little stays whole.
    /// </remarks>
    public Edge? PartThatMayReachBorder(in Edge curve)
    {
        double lengthMm = curve.LengthMm;
        double fromMm = TooNearMm(curve, lengthMm, isFromEnd: false);
        double toMm = lengthMm - TooNearMm(curve, lengthMm, isFromEnd: true);
        if (toMm - fromMm <= tolerances.JoinMm)
        {
            return null;
        }

        // Ends stay clear of where other curves cross this one, which is where the border begins.
        fromMm = Math.Max(0, fromMm - (lengthMm * Margin));
        toMm = Math.Min(lengthMm, toMm + (lengthMm * Margin));
        return toMm - fromMm > WorthKeepingWhole * lengthMm ? curve : curve.Part(fromMm / lengthMm, toMm / lengthMm);
    }

    /// <inheritdoc/>
    public bool MayBeOnBorder(Point middle) => DistanceTo(middle) >= _leastMm;

    /// <inheritdoc/>
    public bool MustBeOnBorder(Point middle, Vector outwardNormal)
    {
        // Away from the original the distance grows, unless another part of it is about as near.
        double stepMm = Math.CopySign(tolerances.ThinMm, distanceMm);
        return DistanceTo(middle + (outwardNormal * stepMm)) >= Math.Abs(distanceMm) + (tolerances.ThinMm / 2);
    }

    /// <summary>How much of a curve from one of its ends on is too near the original, in millimetres; no more than all.</summary>
    private double TooNearMm(in Edge curve, double lengthMm, bool isFromEnd)
    {
        double passedMm = 0;
        for (int i = 0; i < MostSteps && passedMm < lengthMm; i++)
        {
            double fraction = passedMm / lengthMm;
            double stepMm = _leastMm - DistanceTo(curve.PointAt(isFromEnd ? 1 - fraction : fraction));
            if (stepMm <= ShortestStep * lengthMm)
            {
                break;
            }

            passedMm += stepMm;
        }

        return Math.Min(passedMm, lengthMm);
    }

    private double DistanceTo(Point p) => OutlineDistance.Between(p, original).DistanceMm;
}
