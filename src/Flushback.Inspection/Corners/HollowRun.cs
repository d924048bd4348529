using System.Collections.Immutable;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Corners;

/// <summary>Bends that follow each other so closely that a cutter meets them as one hollow.</summary>
internal sealed record HollowRun(ImmutableArray<Bend> Bends)
{
    /// <summary>How far the border turns in all.</summary>
    public double TurnRad => Bends.Sum(bend => bend.TurnRad);

    /// <summary>The tightest of the bends, leaving out corners so flat that they are the rounding of a smooth joint.</summary>
    public Bend Tightest =>
        Bends
            .Where(bend => !bend.IsCorner || bend.TurnRad > CutTolerances.SmoothRad)
            .DefaultIfEmpty(Bends[0])
            .MinBy(bend => bend.RadiusMm);

    /// <summary>The least radius, 0 when there is a corner; null when the border hardly turns at all.</summary>
    public double? RadiusMm => TurnRad > CutTolerances.SmoothRad ? Tightest.RadiusMm : null;

    /// <summary>Metal that a round cutter leaves in the hollow, measured from its deepest point; infinite past half a turn.</summary>
    /// <remarks>
    /// A circle of radius R between two tangents that turn by t stays R (1/cos(t/2) - 1) short of their corner, and a fillet
    /// of radius r stays r (1/cos(t/2) - 1) short of it (elementary geometry).
    /// </remarks>
    public double LeftByMm(double cutterRadiusMm)
    {
        double turn = TurnRad;
        return turn >= Math.PI
            ? double.PositiveInfinity
            : Math.Max(0, cutterRadiusMm - Tightest.RadiusMm) * ((1 / Math.Cos(turn / 2)) - 1);
    }
}
