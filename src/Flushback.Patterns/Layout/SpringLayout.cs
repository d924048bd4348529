using Flushback.Geometry;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Layout;

/// <summary>Where spring, pins and handle's line lie; knife frame, blade open.</summary>
internal sealed class SpringLayout
{
    // Shares that stand in for numbers that were left out (common practice, no source).
    private const double CentrePinOfLength = 0.51;
    private const double RearPinOfLength = 0.83;
    private const double KickPlaceOfHeight = 1.5;
    private const double KickHeightOfHeight = 0.35;
    private const double PadBehindKickMm = 3.5;

    // A back that falls leaves the spring's rear less room over the edge.
    private const double KickHeightOfDrop = 0.7;
    private const double UsualPreload = 0.0035;
    private const double UsualPreloadOnRoundTang = 0.01;
    private const double MostDepthOfNose = 1.35;

    public SpringLayout(PatternParameters p)
    {
        SpringParameters spring = p.Spring;
        double height = p.Tang.HeightMm;
        double back = height + spring.NoseDepthMm;
        double kickPlace = p.Tang.KickPlaceMm ?? (KickPlaceOfHeight * height);
        double padEnd = spring.PadEndMm ?? (kickPlace + PadBehindKickMm);
        double centreBehind = p.Pins.CentreBehindMm ?? (CentrePinOfLength * p.Handle.ClosedLengthMm);
        double rearBehind = p.Pins.RearBehindMm ?? (RearPinOfLength * p.Handle.ClosedLengthMm);
        double flatDepth = p.Tang.OpenFlatDepthMm ?? (spring.NoseDepthMm - ShoulderUnderBackMm);

        HandleLine = BackLine.Falling(back - p.Readings.OpenMm, -padEnd, p.Handle.BackDropMm, -rearBehind);
        FinishedBack = HandleLine.Out(p.Readings.OpenMm);

        // How near the edge comes to the pivot; the bearing's tilt moves it by hundredths only.
        double edge = p.Blade.WidthMm is { } width
            ? width - height - flatDepth
            : height + p.Readings.ClosedMm - (p.Tang.KickHeightMm ?? UsualKickMm(p));
        double past = Math.Max(0, p.Readings.ClosedRestDeg - 180);
        double raised = centreBehind * Math.Tan(Angle.FromDegrees(past).Radians);
        double centreDepth =
            spring.CentreDepthMm
            ?? Math.Min(
                MostDepthOfNose * spring.NoseDepthMm,
                FinishedBack.At(-centreBehind).Y - edge - EdgeRoomMm - raised
            );
        double centrePinDepth = p.Pins.CentreDepthMm ?? (centreDepth / 2);

        CentrePin = HandleLine.At(-centreBehind) - new Vector(0, centrePinDepth);
        double preload =
            spring.PreloadMm ?? (p.Tang.HasHalfStop ? UsualPreload : UsualPreloadOnRoundTang) * p.Handle.ClosedLengthMm;
        FreeTurn = new Angle(Math.Asin(preload / centreBehind));
        DialPoint = new Point(0, back + spring.FrontStockMm);
        Filled = p with
        {
            Pins = p.Pins with
            {
                CentreBehindMm = centreBehind,
                RearBehindMm = rearBehind,
                CentreDepthMm = centrePinDepth,
            },
            Tang = p.Tang with { KickPlaceMm = kickPlace, OpenFlatDepthMm = flatDepth },
            Spring = spring with { CentreDepthMm = centreDepth, PadEndMm = padEnd, PreloadMm = preload },
        };
    }

    /// <summary>Room between the closed edge and a spring whose depth was left out.</summary>
    public const double EdgeRoomMm = 0.5;

    /// <summary>How far the spine lies under the spring's back, where nothing else is said.</summary>
    public const double ShoulderUnderBackMm = 0.2;

    /// <summary>How far the kick stands out under the edge, where nothing else is said.</summary>
    public static double UsualKickMm(PatternParameters p) =>
        (KickHeightOfHeight * p.Tang.HeightMm) + (KickHeightOfDrop * p.Handle.BackDropMm);

    /// <summary>The line the handle's back has.</summary>
    public BackLine HandleLine { get; }

    /// <summary>The line the spring's back has when all stock is off, spring on its pins.</summary>
    public BackLine FinishedBack { get; }

    /// <summary>The centre pin.</summary>
    public Point CentrePin { get; }

    /// <summary>How far the spring turns when the blade is taken out: the nose sinks over the pivot by the preload.</summary>
    public Angle FreeTurn { get; }

    /// <summary>Turns what lies on the handle's pins to where the spring is drawn.</summary>
    public RigidMotion AsDrawn => RigidMotion.RotationAbout(CentrePin, FreeTurn);

    /// <summary>Where the dial stands.</summary>
    public Point DialPoint { get; }

    /// <summary>The parameters with what follows from spring and pins filled in.</summary>
    public PatternParameters Filled { get; }

    /// <summary>The turn of the spring at which the dial reads a lift, zeroed where the spring is drawn.</summary>
    /// <remarks>The dial's arm (x, y) from the centre pin rises by x sin t + y cos t - y.</remarks>
    public Angle TurnAt(double liftMm)
    {
        Vector arm = DialPoint - CentrePin;
        return new Angle(Math.Asin((liftMm + arm.Y) / arm.Length)) - arm.Direction;
    }

    /// <summary>The spring's underside over the tang, turned, as a face that bears on it from below.</summary>
    /// <returns>Normal and offset in the knife frame: a point of the underside keeps its distance from the centre pin.</returns>
    public BearingFace UndersideAt(Angle turn)
    {
        Vector normal = new Vector(0, 1).Rotated(turn);
        double underPin = Filled.Tang.HeightMm - CentrePin.Y;
        return new BearingFace(normal, normal.Dot(CentrePin - Point.Origin) + underPin);
    }

    /// <summary>The face of the blade that lies along the underside when the blade has turned and the dial reads a lift.</summary>
    public BearingFace FaceAt(Angle bladeAngle, double liftMm)
    {
        BearingFace underside = UndersideAt(TurnAt(liftMm));
        return underside with { Normal = underside.Normal.Rotated(bladeAngle) };
    }
}
