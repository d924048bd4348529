using Flushback.Geometry;
using Flushback.Mechanism.Handle.Beams;

namespace Flushback.Mechanism.Handle.Solving;

/// <summary>The spring in the handle at one blade angle: of all poses without overlap the one of least energy.</summary>
/// <param name="BladeAngle">Blade angle, clockwise from open.</param>
/// <param name="IsPossible">False when no pose is free of overlap there.</param>
/// <param name="Pose">Where the nose lies.</param>
/// <param name="EnergyNmm">Strain energy of the spring, in N mm (millijoules).</param>
/// <param name="Load">What the tang does to the nose.</param>
/// <param name="ContactCount">How many contacts press: 0 to 2.</param>
/// <param name="First">The first contact, when there is one.</param>
/// <param name="Second">The second, when there are two.</param>
public readonly record struct NoseState(
    Angle BladeAngle,
    bool IsPossible,
    NosePose Pose,
    double EnergyNmm,
    NoseLoad Load,
    int ContactCount,
    NoseContact First,
    NoseContact Second
)
{
    /// <summary>Slope of the energy over the blade angle, in N mm per radian.</summary>
    /// <remarks>
    /// The torque that turns the blade slowly towards closed without friction; negative where the spring itself drives it
    /// there. By the contact forces; that it is the derivative of the energy is the envelope theorem.
    /// </remarks>
    public double TorqueNmm => -(First.BladeTorqueNmm + Second.BladeTorqueNmm);

    /// <summary>Sum of the contact forces on the spring, in newtons; the pivot pin bears its opposite.</summary>
    public Vector ForceN => First.Force + Second.Force;

    /// <summary>The greater contact force, in newtons.</summary>
    public double GreatestForceN => Math.Max(First.ForceN, Second.ForceN);

    /// <summary>Torque of friction that has to be overcome whichever way the blade turns, in N mm.</summary>
    /// <remarks>
    /// Sliding at the contacts and on the pivot pin, each with the friction coefficient; the forces themselves are those
    /// without friction.
    /// </remarks>
    public double FrictionTorqueNmm(double friction, double pivotRadiusMm) =>
        friction
        * (
            (First.ForceN * First.FrictionArmMm)
            + (Second.ForceN * Second.FrictionArmMm)
            + (ForceN.Length * pivotRadiusMm)
        );
}
