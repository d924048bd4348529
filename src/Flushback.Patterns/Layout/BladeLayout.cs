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

    /// <summary>Where the edge begins.</summary>
    public double EdgeStartX { get; }

    /// <summary>How far before the tip the spine begins to fall.</summary>
    public double PointMm { get; }

    /// <summary>How far before the tip the edge begins to rise; 0 for a straight edge.</summary>
    public double SweepMm { get; }

    /// <summary>The parameters with what follows from the blade filled in.</summary>
    public PatternParameters Filled { get; }
}
