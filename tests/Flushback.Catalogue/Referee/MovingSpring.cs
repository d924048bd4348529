using NetTopologySuite.Geometries;

namespace Flushback.Catalogue.Referee;

/// <summary>A spring that is turned and moved, again and again, into the frame of the blade.</summary>
/// <remarks>One ring of coordinates is written over each time; not safe for use by several threads at once.</remarks>
internal sealed class MovingSpring
{
    private readonly Coordinate[] drawn;
    private readonly Coordinate[] moved;
    private readonly Coordinate centrePin;
    private readonly GeometryFactory factory;

    /// <summary>A spring as drawn and the pin it rocks on.</summary>
    public MovingSpring(Polygon spring, Coordinate centrePin)
    {
        drawn = spring.ExteriorRing.Coordinates;
        moved = [.. drawn.Select(c => c.Copy())];
        this.centrePin = centrePin;
        factory = spring.Factory;
    }

    /// <summary>
    /// The spring as the blade sees it: turned by a rotation about the centre pin, then carried back by the blade angle
    /// about the pivot, so that the blade can stand still.
    /// </summary>
    public Polygon SeenFromBlade(double bladeAngle, double rotation)
    {
        (double sinBlade, double cosBlade) = Math.SinCos(bladeAngle);
        (double sin, double cos) = Math.SinCos(bladeAngle + rotation);
        double pinX = (cosBlade * centrePin.X) - (sinBlade * centrePin.Y);
        double pinY = (sinBlade * centrePin.X) + (cosBlade * centrePin.Y);
        for (int i = 0; i < drawn.Length; i++)
        {
            double x = drawn[i].X - centrePin.X;
            double y = drawn[i].Y - centrePin.Y;
            moved[i].X = pinX + (cos * x) - (sin * y);
            moved[i].Y = pinY + (sin * x) + (cos * y);
        }

        return factory.CreatePolygon(moved);
    }
}
