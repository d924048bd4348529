using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;

namespace Flushback.Mechanism.Handle.Solving;

/// <summary>A place where the tang presses on the nose.</summary>
/// <param name="Feature">Where, in which direction, and which edges and vertices; levers about the raised centre pin.</param>
/// <param name="ForceN">How hard, along the normal from blade to spring; never negative.</param>
public readonly record struct NoseContact(SpringPose.Feature Feature, double ForceN)
{
    /// <summary>Torque of this force on the blade towards larger blade angles, without friction, in N mm.</summary>
    /// <remarks>The spring pushes back on the blade; the blade angle runs clockwise.</remarks>
    public double BladeTorqueNmm => ForceN * Feature.BladeLever;

    /// <summary>Arm of friction at this contact about the pivot, in millimetres.</summary>
    public double FrictionArmMm => Math.Abs((Feature.At - Point.Origin).Dot(Feature.Normal));

    /// <summary>Force on the spring.</summary>
    public Vector Force => Feature.Normal * ForceN;
}
