using NetTopologySuite.Geometries;

namespace Flushback.Catalogue.Referee;

/// <summary>A spring that is turned and moved, again and again, into the frame of the blade.</summary>
/// <remarks>One ring of coordinates is written over each time; not safe for use by several threads at once.</remarks>
internal sealed class MovingSpring
{
    private readonly Coordinate[] _drawn;
    private readonly Coordinate[] _moved;
    private readonly Coordinate _centrePin;
    private readonly GeometryFactory _factory;

    /// <summary>A spring as drawn and the pin it rocks on.</summary>
    public MovingSpring(Polygon spring, Coordinate centrePin)
    {
        _drawn = spring.ExteriorRing.Coordinates;
        _moved = [.. _drawn.Select(c => c.Copy())];
        _centrePin = centrePin;
        _factory = spring.Factory;
    }

    /// <summary>
    /// The spring as the blade sees it: turned by a rotation about the centre pin, then carried back by the blade angle
    /// about the pivot, so that the blade can stand still.
    /// </summary>
    public Polygon SeenFromBlade(double bladeAngle, double rotation)
    {
        (double sinBlade, double cosBlade) = Math.SinCos(bladeAngle);
        (double sin, double cos) = Math.SinCos(bladeAngle + rotation);
        double pinX = (cosBlade * _centrePin.X) - (sinBlade * _centrePin.Y);
        double pinY = (sinBlade * _centrePin.X) + (cosBlade * _centrePin.Y);
        for (int i = 0; i < _drawn.Length; i++)
        {
            double x = _drawn[i].X - _centrePin.X;
            double y = _drawn[i].Y - _centrePin.Y;
            _moved[i].X = pinX + (cos * x) - (sin * y);
            _moved[i].Y = pinY + (sin * x) + (cos * y);
        }

        return _factory.CreatePolygon(_moved);
    }
}
