using Flushback.Geometry;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Layout;

/// <summary>
/// The faces of the tang that bear at the stops, and the rounds between them; knife frame, blade open. A coordinate is NaN
/// where no such round exists.
/// </summary>
/// <remarks>
/// At a stop the wanted reading says how far the spring has turned, and so where its straight underside lies; turned back
/// with the blade that is the line the face has to touch at both of its ends. So the faces are placed exactly, in closed
/// form, and a blade that stands on both ends of a face rests there.
/// </remarks>
internal sealed class TangLayout
{
    public TangLayout(PatternParameters p, SpringLayout spring)
    {
        TangParameters tang = p.Tang;
        BearingFace level = BearingFace.Level(tang.HeightMm);
        Closed = spring.FaceAt(Angle.FromDegrees(p.Readings.ClosedRestDeg), p.Readings.ClosedMm);
        if (tang.HasHalfStop)
        {
            HalfStop = spring.FaceAt(Angle.FromDegrees(p.Readings.HalfStopRestDeg), p.Readings.HalfStopMm);
            OpenCorner = level.RoundCentre(HalfStop, tang.OpenCornerRadiusMm);
            ClosedCorner = HalfStop.RoundCentre(Closed, tang.ClosedCornerRadiusMm);
        }
        else
        {
            RunRadiusMm = spring.UndersideAt(spring.TurnAt(tang.RunRiseMm)).OffsetMm;
            OpenCorner = level.RearRoundCentre(RunRadiusMm, tang.OpenCornerRadiusMm);
            ClosedCorner = Closed.RearRoundCentre(RunRadiusMm, tang.ClosedCornerRadiusMm);
        }

        Angle tilt = Angle.FromDegrees(90 - tang.OpenFlatTiltDeg);
        Vector flatNormal = Vector.FromDirection(tilt);
        OpenFlat = BearingFace.Through(OpenCorner + (flatNormal * tang.OpenCornerRadiusMm), flatNormal);
        KickContact = Closed.AtX(tang.KickPlaceMm!.Value);
        Kick = KickContact - (Closed.Normal * tang.KickRadiusMm);
    }

    /// <summary>The line both ends of the half-stop face touch; not used on a round tang.</summary>
    public BearingFace HalfStop { get; }

    /// <summary>The line the closed corner and the kick touch.</summary>
    public BearingFace Closed { get; }

    /// <summary>The open flat, were it straight.</summary>
    public BearingFace OpenFlat { get; }

    /// <summary>Round tang only: radius of its round about the pivot.</summary>
    public double RunRadiusMm { get; }

    /// <summary>Centre of the open corner's round, whose top carries the spring when open.</summary>
    public Point OpenCorner { get; }

    /// <summary>Centre of the closed corner's round.</summary>
    public Point ClosedCorner { get; }

    /// <summary>Centre of the kick's round.</summary>
    public Point Kick { get; }

    /// <summary>Where the kick bears when closed.</summary>
    public Point KickContact { get; }

    /// <summary>How far the tang reaches behind the pivot, blade open.</summary>
    public double RearMm(PatternParameters p) =>
        p.Tang.HasHalfStop
            ? Math.Max(p.Tang.OpenCornerRadiusMm - OpenCorner.X, p.Tang.ClosedCornerRadiusMm - ClosedCorner.X)
            : RunRadiusMm;

    /// <summary>How far in front of the pivot the underside of the nose has to reach to lie on every contact.</summary>
    public double FarthestContactMm(PatternParameters p)
    {
        Vector corner = ClosedCorner + (Closed.Normal * p.Tang.ClosedCornerRadiusMm) - Point.Origin;
        double closed = corner.Rotated(-Angle.FromDegrees(p.Readings.ClosedRestDeg)).X;
        if (!p.Tang.HasHalfStop)
        {
            return closed;
        }

        Vector open = OpenCorner + (HalfStop.Normal * p.Tang.OpenCornerRadiusMm) - Point.Origin;
        return Math.Max(closed, open.Rotated(-Angle.FromDegrees(p.Readings.HalfStopRestDeg)).X);
    }
}
