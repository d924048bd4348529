using Flushback.Geometry;

namespace Flushback.Mechanism.Handle.Solving;

/// <summary>
/// Where the stiff nose lies: turned about the centre pin from where it is drawn, then shifted upward by the bow of the
/// spring. Knife frame.
/// </summary>
/// <remarks>
/// A spring that does not bow only turns about its centre pin: then this is the bench.
/// </remarks>
/// <param name="Turn">Turn from where the spring is drawn, counter-clockwise.</param>
/// <param name="BowMm">Shift towards +y after the turn, in millimetres.</param>
public readonly record struct NosePose(Angle Turn, double BowMm)
{
    /// <summary>Carries the nose from where it is drawn to this pose.</summary>
    /// <param name="centrePin">Centre of the centre pin.</param>
    public RigidMotion From(Point centrePin) =>
        RigidMotion.RotationAbout(centrePin, Turn).Then(new RigidMotion(Angle.Zero, new Vector(0, BowMm)));

    /// <summary>Height of a point of the nose over where it is drawn.</summary>
    public double RiseOf(Point drawn, Point centrePin)
    {
        Vector arm = drawn - centrePin;
        return arm.Rotated(Turn).Y - arm.Y + BowMm;
    }
}
