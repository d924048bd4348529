using Flushback.Geometry;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Layout;

/// <summary>The spring behind the centre pin, which the closed edge must not touch; knife frame, spring on its pins.</summary>
internal sealed class RearLayout
{
    private const double RearOfCentreDepth = 0.8;
    private const double BossBesidePinMm = 1.4;
    private const int Stations = 12;

    public RearLayout(PatternParameters p, SpringLayout spring, BladeLayout blade)
    {
        double pinX = spring.CentrePin.X;
        double rearX = -p.Pins.RearBehindMm!.Value;
        double centreDepth = p.Spring.CentreDepthMm!.Value;
        HalfBossMm = (p.Pins.CentreDiameterMm / 2) + BossBesidePinMm;
        UnderPinY = spring.FinishedBack.At(pinX).Y - centreDepth;
        BossRear = new Point(pinX - HalfBossMm, UnderPinY);
        double back = spring.FinishedBack.At(rearX).Y;
        double depth =
            p.Spring.RearDepthMm ?? Math.Min(RearOfCentreDepth * centreDepth, back - LowestAt(rearX, p, spring, blade));
        double pinDepth = p.Pins.RearDepthMm ?? (depth / 2);
        Underside = new Point(rearX, back - depth);
        PinInHandle = spring.HandleLine.At(rearX) - new Vector(0, pinDepth);
        PinInSpring = spring.AsDrawn.Apply(PinInHandle);
        Filled = p with
        {
            Pins = p.Pins with { RearDepthMm = pinDepth },
            Spring = p.Spring with { RearDepthMm = depth },
        };
    }

    /// <summary>Half the length of the straight underside below the centre pin.</summary>
    public double HalfBossMm { get; }

    /// <summary>Height of the underside below the centre pin.</summary>
    public double UnderPinY { get; }

    /// <summary>Where the underside leaves the centre pin's boss to the rear.</summary>
    public Point BossRear { get; }

    /// <summary>The underside at the rear pin.</summary>
    public Point Underside { get; }

    /// <summary>The rear pin in liners and scales.</summary>
    public Point PinInHandle { get; }

    /// <summary>The rear pin's hole in the spring where it is drawn, the nose on the open flat and unbent.</summary>
    public Point PinInSpring { get; }

    /// <summary>The parameters with the spring's rear filled in.</summary>
    public PatternParameters Filled { get; }

    /// <summary>How low the underside may lie at the rear pin for the closed edge to pass clear of it from the boss on.</summary>
    private double LowestAt(double rearX, PatternParameters p, SpringLayout spring, BladeLayout blade)
    {
        // The closed blade seen from the spring, turned back to where it lies on its pins.
        RigidMotion closed = RigidMotion
            .RotationAbout(Point.Origin, -Angle.FromDegrees(p.Readings.ClosedRestDeg))
            .Then(RigidMotion.RotationAbout(spring.CentrePin, -(spring.FreeTurn + spring.TurnAt(p.Readings.ClosedMm))));
        double steepest = double.NegativeInfinity;
        for (int i = 0; i <= Stations; i++)
        {
            double x = blade.TipX - (blade.SweepMm * i / Stations);
            Point edge = closed.Apply(new Point(x, blade.EdgeYAt(x)));
            double behindBoss = BossRear.X - edge.X;
            if (behindBoss > HalfBossMm)
            {
                double needed = edge.Y + SpringLayout.EdgeRoomMm - BossRear.Y;
                steepest = Math.Max(steepest, needed / behindBoss);
            }
        }

        return double.IsFinite(steepest) ? BossRear.Y + (steepest * (BossRear.X - rearX)) : BossRear.Y;
    }
}
