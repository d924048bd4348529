namespace Flushback.Mechanism.Handle.Beams;

/// <summary>
/// How the nose gives way to a load at its beginning: rise and tilt for a force and a moment there, with modulus and
/// width each 1; divide by both for a real spring.
/// </summary>
/// <remarks>
/// Sums of squares of the unit loads' bending moments over the second moment (unit-load method; elementary beam theory
/// without shear, which adds about 0.78 (depth/length)^2, well under a percent on a backspring).
/// </remarks>
/// <param name="RisePerForce">Of a force: the rise, mm^3 over mm^3.</param>
/// <param name="TiltPerForce">Of a force: the tilt; the same as the rise of a moment.</param>
/// <param name="TiltPerMoment">Of a moment: the tilt.</param>
public readonly record struct NoseFlexibility(double RisePerForce, double TiltPerForce, double TiltPerMoment)
{
    /// <summary>Two springs one after the other give way together.</summary>
    public static NoseFlexibility operator +(NoseFlexibility a, NoseFlexibility b) =>
        new(a.RisePerForce + b.RisePerForce, a.TiltPerForce + b.TiltPerForce, a.TiltPerMoment + b.TiltPerMoment);

    /// <summary>Stiffness of a spring of a modulus and width.</summary>
    /// <param name="modulusMpa">Modulus of elasticity in MPa.</param>
    /// <param name="widthMm">Width of the spring, square to the outline, in millimetres.</param>
    public NoseStiffness ToStiffness(double modulusMpa, double widthMm)
    {
        double scale = modulusMpa * widthMm / ((RisePerForce * TiltPerMoment) - (TiltPerForce * TiltPerForce));
        return new NoseStiffness(TiltPerMoment * scale, -TiltPerForce * scale, RisePerForce * scale);
    }
}
