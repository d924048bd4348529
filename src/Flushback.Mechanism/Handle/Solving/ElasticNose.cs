using Flushback.Geometry;
using Flushback.Mechanism.Handle.Beams;

namespace Flushback.Mechanism.Handle.Solving;

/// <summary>The spring's energy as a function of the pose of its nose.</summary>
/// <param name="Stiffness">Of the nose.</param>
/// <param name="OverhangMm">From the centre pin to where the stiff nose begins.</param>
/// <param name="FreeTurn">Turn at which the spring lies unbent, both pins in place, were the tang not there.</param>
public sealed record ElasticNose(NoseStiffness Stiffness, double OverhangMm, Angle FreeTurn)
{
    private NosePosition Free => PositionAt(new NosePose(FreeTurn, 0));

    /// <summary>Rise and tilt of the nose.</summary>
    public NosePosition PositionAt(NosePose pose) =>
        new(pose.BowMm + (OverhangMm * Math.Sin(pose.Turn.Radians)), pose.Turn.Radians);

    /// <summary>Energy stored at a pose, in N mm.</summary>
    public double EnergyAt(NosePose pose) => Stiffness.EnergyAt(PositionAt(pose) - Free);

    /// <summary>What holds the nose at a pose.</summary>
    public NoseLoad LoadAt(NosePose pose) => Stiffness.LoadAt(PositionAt(pose) - Free);

    /// <summary>Derivatives of the energy to bow (N) and turn (N mm).</summary>
    internal (double ToBow, double ToTurn) Slopes(NosePose pose)
    {
        NoseLoad load = LoadAt(pose);
        return (load.ForceN, load.MomentNmm + (load.ForceN * OverhangMm * Math.Cos(pose.Turn.Radians)));
    }

    /// <summary>Second derivative of the energy along a line on which the turn changes at a rate with the bow.</summary>
    internal double CurvatureAlong(NosePose pose, double turnPerBow)
    {
        (double sin, double cos) = Math.SinCos(pose.Turn.Radians);
        double risePerBow = 1 + (OverhangMm * cos * turnPerBow);
        double bend = LoadAt(pose).ForceN * OverhangMm * -sin * turnPerBow * turnPerBow;
        return (Stiffness.ForcePerRise * risePerBow * risePerBow)
            + (2 * Stiffness.ForcePerTilt * risePerBow * turnPerBow)
            + (Stiffness.MomentPerTilt * turnPerBow * turnPerBow)
            + bend;
    }

    /// <summary>The turn of least energy at a bow, were the tang not there.</summary>
    internal Angle FreeTurnAt(double bowMm)
    {
        Angle turn = FreeTurn;
        for (int round = 0; round < 4; round++)
        {
            NosePose pose = new(turn, bowMm);
            double slope = Slopes(pose).ToTurn;
            (double sin, double cos) = Math.SinCos(turn.Radians);
            double arm = OverhangMm * cos;
            double curvature =
                (Stiffness.ForcePerRise * arm * arm)
                + (2 * Stiffness.ForcePerTilt * arm)
                + Stiffness.MomentPerTilt
                - (LoadAt(pose).ForceN * OverhangMm * sin);
            turn -= new Angle(slope / curvature);
        }

        return turn;
    }
}
