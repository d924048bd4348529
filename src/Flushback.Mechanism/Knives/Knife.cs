using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Mechanism.Knives;

/// <summary>
/// A blade and its spring in the knife frame: pivot at the origin, blade open along +x with its spine towards +y,
/// spring above the tang and running to -x; millimetres.
/// </summary>
/// <remarks>
/// The blade angle turns the blade clockwise: 0 as drawn open, 90 degrees at the half stop, 180 closed. The spring
/// rotation turns the spring counter-clockwise about the centre pin: positive as the nose rises.
/// </remarks>
public sealed record Knife
{
    /// <summary>The blade at blade angle 0, counter-clockwise.</summary>
    public required Outline Blade { get; init; }

    /// <summary>What each edge of the blade is; as long as its edges.</summary>
    public required ImmutableArray<BladeFace> BladeFaces { get; init; }

    /// <summary>The spring as drawn, counter-clockwise.</summary>
    public required Outline Spring { get; init; }

    /// <summary>What each edge of the spring is; as long as its edges.</summary>
    public required ImmutableArray<SpringFace> SpringFaces { get; init; }

    /// <summary>Radius of the blade pin, whose centre is the origin.</summary>
    public required double PivotRadiusMm { get; init; }

    /// <summary>The pin the spring rocks on.</summary>
    public required Circle CentrePin { get; init; }

    /// <summary>The pin at the rear end of the spring.</summary>
    public Circle? RearPin { get; init; }

    /// <summary>The handle as seen from the side, counter-clockwise.</summary>
    public Outline? Handle { get; init; }

    /// <summary>Where the dial stands on the spring's back, with the spring as drawn.</summary>
    public required Point DialPoint { get; init; }

    /// <summary>Whether the tang is made to stop at 90 degrees; null to find it from the lift.</summary>
    public bool? HasHalfStop { get; init; }

    /// <summary>Turns the blade (drawn at blade angle 0) to a blade angle.</summary>
    public static RigidMotion BladeAt(Angle bladeAngle) => RigidMotion.RotationAbout(Point.Origin, -bladeAngle);

    /// <summary>Turns the spring from where it is drawn by a spring rotation.</summary>
    public RigidMotion SpringAt(Angle springRotation) => RigidMotion.RotationAbout(CentrePin.Centre, springRotation);

    /// <summary>Travel of the dial point towards +y when the spring turns from one rotation to another, in millimetres.</summary>
    public double LiftMm(Angle from, Angle to)
    {
        Vector arm = DialPoint - CentrePin.Centre;
        return arm.Rotated(to).Y - arm.Rotated(from).Y;
    }
}
