using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>Angles in degrees, as ARC and INSERT give them, with quarter turns exact.</summary>
internal static class Degrees
{
    /// <summary>The unit vector in a direction; exact for multiples of 90 degrees, so that square corners stay square.</summary>
    public static Vector Direction(double degrees)
    {
        double turn = degrees % 360;
        turn = turn < 0 ? turn + 360 : turn;
        return turn switch
        {
            0 => new Vector(1, 0),
            90 => new Vector(0, 1),
            180 => new Vector(-1, 0),
            270 => new Vector(0, -1),
            _ => Vector.FromDirection(Angle.FromDegrees(turn)),
        };
    }

    /// <summary>The counter-clockwise way from one direction to another, in (0, 360] degrees.</summary>
    public static double Sweep(double fromDegrees, double toDegrees)
    {
        double sweep = (toDegrees - fromDegrees) % 360;
        return sweep <= 0 ? sweep + 360 : sweep;
    }
}
