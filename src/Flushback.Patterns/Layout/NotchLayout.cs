using Flushback.Geometry;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Layout;

/// <summary>Shoulder and end face, which touch when the blade is open; knife frame.</summary>
/// <remarks>
/// The shoulder leans farther over the nose than the end face leans back, so the round of its top touches the end face where
/// the end face's normal points: one is slid along the handle until they meet.
/// </remarks>
internal sealed class NotchLayout
{
    // How far the nose reaches in front of the pivot where nothing is said, in tang heights.
    private const double UsualReach = 1.12;
    private const double UsualReachOnRoundTang = 0.98;

    public NotchLayout(PatternParameters p, TangLayout tang)
    {
        double height = p.Tang.HeightMm;
        double radius = p.Tang.ShoulderRadiusMm;
        SpineMm = height + p.Tang.OpenFlatDepthMm!.Value;
        ShoulderNormal = Vector.FromDirection(Angle.FromDegrees(-90 - p.Tang.ShoulderDeg));
        EndFaceNormal = Vector.FromDirection(Angle.FromDegrees(90 - p.Spring.EndFaceDeg));
        BearingFace top = BearingFace.Level(SpineMm - radius);
        BearingFace flat = BearingFace.Level(height);
        double rear = tang.RearMm(p);
        if (p.Tang.LengthMm is { } length)
        {
            Shoulder = BearingFace.Through(new Point(length - rear, height), ShoulderNormal);
            ShoulderRound = Shoulder.In(radius).Meets(top);
            EndFace = BearingFace.Through(ContactOn(radius), EndFaceNormal);
        }
        else
        {
            double usual = p.Tang.HasHalfStop ? UsualReach * height : UsualReachOnRoundTang * height;
            double rounded = p.Spring.NoseRadiusMm / Math.Tan(Angle.FromDegrees(p.Spring.EndFaceDeg / 2).Radians);
            double reach = Math.Max(usual, tang.FarthestContactMm(p) + (2 * LeastOverhangMm) + rounded);
            EndFace = BearingFace.Through(new Point(reach, height), EndFaceNormal);
            ShoulderRound = (EndFace with { OffsetMm = EndFace.OffsetMm + radius }).Meets(top);
            Shoulder = BearingFace.Through(ShoulderRound + (ShoulderNormal * radius), ShoulderNormal);
        }

        ShoulderContact = ContactOn(radius);
        NoseRound = EndFace.RoundCentre(new BearingFace(new Vector(0, -1), -height), p.Spring.NoseRadiusMm);
        TangLengthMm = Shoulder.Meets(flat).X + rear;
        NoseReachMm = EndFace.Meets(flat).X;
    }

    /// <summary>How far the straight underside has to reach past the farthest contact.</summary>
    public const double LeastOverhangMm = 0.1;

    /// <summary>Height of the spine over the pivot.</summary>
    public double SpineMm { get; }

    /// <summary>Unit normal out of the shoulder.</summary>
    public Vector ShoulderNormal { get; }

    /// <summary>Unit normal out of the end face.</summary>
    public Vector EndFaceNormal { get; }

    /// <summary>The shoulder below its round.</summary>
    public BearingFace Shoulder { get; }

    /// <summary>The end face, spring as drawn.</summary>
    public BearingFace EndFace { get; }

    /// <summary>Centre of the round of the shoulder's top.</summary>
    public Point ShoulderRound { get; }

    /// <summary>Where shoulder and end face touch.</summary>
    public Point ShoulderContact { get; }

    /// <summary>Centre of the round of the nose's lower corner.</summary>
    public Point NoseRound { get; }

    /// <summary>From the shoulder's foot at the height of the open flat to the rear of the tang.</summary>
    public double TangLengthMm { get; }

    /// <summary>How far the nose's lower corner, were it sharp, lies in front of the pivot.</summary>
    public double NoseReachMm { get; }

    private Point ContactOn(double radiusMm) => ShoulderRound - (EndFaceNormal * radiusMm);
}
