using Flushback.Geometry;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Layout;

/// <summary>Where the ends of handle and blade lie, and how high spine, edge and tip; knife frame, blade open.</summary>
internal sealed class BladeLayout
{
    private const double FrontOverTangMm = 1.3;
    private const double FrontOverRearMm = 0.5;
    private const double FrontOverNoseMm = 0.5;
    private const double LengthOfHandle = 0.76;
    private const double NickOfReach = 0.6;
    private const double NickBehindPointMm = 1;

    // How far the nick's straight side lies under the spine, as a share of the width.
    private const double NickUnderSpine = 0.08;
    private const double LeastSweepOfRise = 1.3;

    public BladeLayout(PatternParameters p, TangLayout tang, NotchLayout notch)
    {
        BladeParameters blade = p.Blade;
        double closedLength = p.Handle.ClosedLengthMm;
        Shape = BladeShape.Of(blade.Family);
        FrontX =
            p.Handle.FrontMm
            ?? Math.Max(
                p.Tang.HeightMm + FrontOverTangMm,
                Math.Max(tang.RearMm(p) + FrontOverRearMm, notch.NoseReachMm + FrontOverNoseMm)
            );
        ButtX = FrontX - closedLength;
        double room = closedLength - (2 * FrontX) - ButtWallMm - p.Handle.WellClearanceMm;
        double length =
            blade.LengthMm ?? p.Handle.OverallLengthMm - closedLength ?? Math.Min(LengthOfHandle * closedLength, room);
        TipX = FrontX + length;

        double kickLow = tang.KickContact.Y;
        double kick =
            p.Tang.KickHeightMm
            ?? (blade.WidthMm is { } given ? notch.SpineMm - given - kickLow : SpringLayout.UsualKickMm(p));
        EdgeY = kickLow + kick;
        KickEnds = KickEnd(kick, p.Tang.KickRadiusMm);
        KickFoot = BearingFace
            .Through(tang.Kick + (KickEnds * p.Tang.KickRadiusMm), KickEnds)
            .Meets(BearingFace.Level(EdgeY));
        double width = notch.SpineMm - EdgeY;
        Tip = new Point(TipX, EdgeY + (Shape.TipShare * width));
        double fall = notch.SpineMm - Tip.Y;
        double rise = Tip.Y - EdgeY;
        PointMm = blade.PointMm ?? Math.Max(Shape.PointOfLength * length, Shape.PointOfFall * fall);
        SweepMm = Shape.HasStraightEdge
            ? 0
            : blade.SweepMm ?? Math.Max(Shape.SweepOfLength * length, LeastSweepOfRise * rise);
        EdgeStartX = tang.KickContact.X + blade.RicassoMm;
        double nick =
            blade.NickPlaceMm
            ?? Math.Min(NickOfReach * TipX, TipX - PointMm - (blade.NickLengthMm / 2) - NickBehindPointMm);
        NickLowY = notch.SpineMm - (NickUnderSpine * width) - blade.NickWidthMm;
        Filled = p with
        {
            Handle = p.Handle with { FrontMm = FrontX, OverallLengthMm = closedLength + length },
            Tang = p.Tang with { LengthMm = notch.TangLengthMm, KickHeightMm = kick },
            Blade = blade with
            {
                LengthMm = length,
                WidthMm = width,
                PointMm = PointMm,
                SweepMm = Shape.HasStraightEdge ? null : SweepMm,
                NickPlaceMm = nick,
            },
        };
    }

    /// <summary>Least length of handle behind the well.</summary>
    public const double ButtWallMm = 3;

    /// <summary>What makes the family.</summary>
    public BladeShape Shape { get; }

    /// <summary>The handle's front end.</summary>
    public double FrontX { get; }

    /// <summary>The handle's butt.</summary>
    public double ButtX { get; }

    /// <summary>The tip's place along the handle.</summary>
    public double TipX { get; }

    /// <summary>The tip.</summary>
    public Point Tip { get; }

    /// <summary>Height of the edge; negative under the pivot.</summary>
    public double EdgeY { get; }

    /// <summary>Height of the edge at a place along the blade.</summary>
    public double EdgeYAt(double x)
    {
        double along = x - (TipX - SweepMm);
        if (along <= 0 || SweepMm <= 0)
        {
            return EdgeY;
        }

        // Tangent to the straight edge and through the tip, as the arc of a half chord and its sagitta.
        double rise = Tip.Y - EdgeY;
        double radius = ((SweepMm * SweepMm) + (rise * rise)) / (2 * rise);
        return EdgeY + radius - Math.Sqrt(Math.Max((radius * radius) - (along * along), 0));
    }

    /// <summary>Unit normal at the end of the kick's round, from where a straight leads up to the edge.</summary>
    public Vector KickEnds { get; }

    /// <summary>Where that straight meets the line of the edge.</summary>
    public Point KickFoot { get; }

    /// <summary>Where the edge begins.</summary>
    public double EdgeStartX { get; }

    /// <summary>How far before the tip the spine begins to fall.</summary>
    public double PointMm { get; }

    /// <summary>How far before the tip the edge begins to rise; 0 for a straight edge.</summary>
    public double SweepMm { get; }

    /// <summary>Height of the nail nick's lowest place, the one that comes nearest to the handle when closed.</summary>
    public double NickLowY { get; }

    /// <summary>The parameters with what follows from the blade filled in.</summary>
    public PatternParameters Filled { get; }

    private const double SteepestKickDeg = 70;

    // Share of the kick's height that its round may take up; the rest is straight.
    private const double RoundOfKick = 0.6;

    /// <summary>As steep as leaves a straight: a round of radius r that turns by t rises by r (1 - cos t).</summary>
    private static Vector KickEnd(double heightMm, double radiusMm)
    {
        double turn = Math.Acos(Math.Clamp(1 - (RoundOfKick * heightMm / radiusMm), -1, 1));
        double least = Math.Min(turn, Angle.FromDegrees(SteepestKickDeg).Radians);
        return Vector.FromDirection(new Angle(least) - Angle.FromDegrees(90));
    }
}
