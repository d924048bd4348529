using Flushback.Geometry;
using Flushback.Mechanism.Handle.Beams;

namespace Flushback.Mechanism.Handle.Solving;

/// <summary>The spring's energy as a function of the pose of its nose.</summary>
/// <remarks>
/// The rise that the beam feels is the bow and the overhang times the turn: along the arc, so that a mere turn about the
/// centre pin bends nothing but the span behind it, and a spring stiff in front of the pin is the bench exactly. Of the
/// true height of the arc it differs by the third power of the turn, 0.003 mm at five degrees.
/// </remarks>
/// <param name="Stiffness">Of the nose.</param>
/// <param name="OverhangMm">From the centre pin to where the stiff nose begins.</param>
/// <param name="FreeTurn">Turn at which the spring lies unbent, both pins in place, were the tang not there.</param>
public sealed record ElasticNose(NoseStiffness Stiffness, double OverhangMm, Angle FreeTurn)
{
    /// <summary>Rise and tilt of the nose from where it lies free.</summary>
    public NosePosition AwayAt(NosePose pose)
    {
        double tilt = (pose.Turn - FreeTurn).Radians;
        return new NosePosition(pose.BowMm + (OverhangMm * tilt), tilt);
    }

    /// <summary>Energy stored at a pose, in N mm.</summary>
    public double EnergyAt(NosePose pose) => Stiffness.EnergyAt(AwayAt(pose));

    /// <summary>What holds the nose at a pose.</summary>
    public NoseLoad LoadAt(NosePose pose) => Stiffness.LoadAt(AwayAt(pose));

    /// <summary>Derivatives of the energy to bow (N) and turn (N mm, the moment about the centre pin).</summary>
    internal (double ToBow, double ToTurn) Slopes(NosePose pose)
    {
        NoseLoad load = LoadAt(pose);
        return (load.ForceN, load.MomentNmm + (load.ForceN * OverhangMm));
    }

    /// <summary>Second derivative of the energy along a line on which the turn changes at a rate with the bow.</summary>
    internal double CurvatureAlong(double turnPerBow)
    {
        double risePerBow = 1 + (OverhangMm * turnPerBow);
        return (Stiffness.ForcePerRise * risePerBow * risePerBow)
            + (2 * Stiffness.ForcePerTilt * risePerBow * turnPerBow)
            + (Stiffness.MomentPerTilt * turnPerBow * turnPerBow);
    }

    /// <summary>The turn of least energy at a bow, were the tang not there.</summary>
    internal Angle FreeTurnAt(double bowMm)
    {
        double perBow = Slopes(new NosePose(FreeTurn, 1)).ToTurn;
        double perTurn = Slopes(new NosePose(FreeTurn + new Angle(1), 0)).ToTurn;
        return FreeTurn - new Angle(bowMm * perBow / perTurn);
    }
}
