using Flushback.Geometry.Polar;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>Where two radial pieces touch first as the spring is turned onto the blade.</summary>
/// <remarks>
/// Turning the spring by phi adds phi to its polar angles and leaves radii alone, so the two overlap at a radius while
/// phi is below (blade angle - spring angle) there. The largest such difference over the common radii lies at an end
/// of the common stretch (a vertex of either outline) or where the two are tangent, which has a closed form for every
/// pair of line and arc. Any radius tried is a valid bound, so a false tangency can do no harm.
/// </remarks>
internal static class Touching
{
    /// <summary>Raises a lower bound by a blade piece below a spring piece.</summary>
    public static void Raise(ref Touch bound, in RadialPiece blade, in RadialPiece spring)
    {
        double inner = Math.Max(blade.InnerMm, spring.InnerMm);
        double outer = Math.Min(blade.OuterMm, spring.OuterMm);
        if (inner <= outer)
        {
            Raise(ref bound, blade, spring, inner, outer);
        }
    }

    /// <summary>Raises a lower bound over a given stretch of radii common to both.</summary>
    public static void Raise(
        ref Touch bound,
        in RadialPiece blade,
        in RadialPiece spring,
        double innerMm,
        double outerMm
    )
    {
        if (blade.MaxAngle - spring.MinAngle <= bound.Rotation)
        {
            return;
        }

        Try(ref bound, blade, spring, innerMm, 1);
        Try(ref bound, blade, spring, outerMm, 1);
        double tangency = TangencyRadius(blade, spring);
        if (tangency > innerMm && tangency < outerMm)
        {
            Try(ref bound, blade, spring, tangency, 1);
        }
    }

    /// <summary>Lowers an upper bound by a blade piece above a spring piece, over a stretch of radii common to both.</summary>
    public static void Lower(
        ref Touch bound,
        in RadialPiece blade,
        in RadialPiece spring,
        double innerMm,
        double outerMm
    )
    {
        if (blade.MinAngle - spring.MaxAngle >= bound.Rotation)
        {
            return;
        }

        Try(ref bound, blade, spring, innerMm, -1);
        Try(ref bound, blade, spring, outerMm, -1);
        double tangency = TangencyRadius(blade, spring);
        if (tangency > innerMm && tangency < outerMm)
        {
            Try(ref bound, blade, spring, tangency, -1);
        }
    }

    private static void Try(ref Touch bound, in RadialPiece blade, in RadialPiece spring, double radiusMm, double sign)
    {
        double bladePolar = blade.AngleAt(radiusMm);
        double rotation = bladePolar - spring.AngleAt(radiusMm);
        if (sign * (rotation - bound.Rotation) > 0)
        {
            bound = new Touch(rotation, radiusMm, bladePolar, blade.Index, spring.Index);
        }
    }

    /// <summary>
    /// Radius at which the two pieces are tangent once the spring is turned, or NaN where they can not be or where the
    /// tangency would be one of deepest overlap.
    /// </summary>
    /// <remarks>
    /// With n the common normal from blade to spring and s the signed radii (convex positive), the touching point is
    /// Cb + sb n = Cs - ss n. A line at distance d along n and an arc: the arc's centre lies at d - sb (or d + ss)
    /// along n, and Pythagoras gives its place along the line. Two arcs: the centres are |sb + ss| apart, the point
    /// divides that stretch as sb to ss, and Stewart's theorem gives its distance from the centre pin.
    /// </remarks>
    internal static double TangencyRadius(in RadialPiece blade, in RadialPiece spring)
    {
        double sb = blade.SignedRadiusMm;
        double ss = spring.SignedRadiusMm;
        if (!blade.IsArc && !spring.IsArc)
        {
            return double.NaN;
        }

        if (!spring.IsArc)
        {
            return sb > 0 ? OnLine(-spring.OffsetMm, blade.OffsetMm, -spring.OffsetMm - sb) : double.NaN;
        }

        if (!blade.IsArc)
        {
            return ss > 0 ? OnLine(blade.OffsetMm, spring.OffsetMm, blade.OffsetMm + ss) : double.NaN;
        }

        if ((1 / sb) + (1 / ss) <= 0)
        {
            return double.NaN;
        }

        double apart = sb + ss;
        double share = sb / apart;
        double db = blade.OffsetMm;
        double ds = spring.OffsetMm;
        return Math.Sqrt(((1 - share) * db * db) + (share * ds * ds) - (share * (1 - share) * apart * apart));
    }

    private static double OnLine(double lineMm, double arcCentreMm, double arcCentreAlongNormalMm)
    {
        double alongLine2 = (arcCentreMm * arcCentreMm) - (arcCentreAlongNormalMm * arcCentreAlongNormalMm);
        return Math.Sqrt(alongLine2 + (lineMm * lineMm));
    }
}
