namespace Flushback.Geometry;

/// <summary>A full circle: a pin or a hole. Millimetres.</summary>
public readonly record struct Circle(Point Centre, double RadiusMm)
{
    /// <summary>Diameter in millimetres.</summary>
    public double DiameterMm => 2 * RadiusMm;
}
