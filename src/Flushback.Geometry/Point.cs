using System.Globalization;

namespace Flushback.Geometry;

/// <summary>A place in the plane, in millimetres. Which frame it is in is said by whoever hands it over.</summary>
/// <remarks>Exact equality; <c>default</c> is the origin. Use <see cref="IsWithin"/> for nearness, with a stated tolerance.</remarks>
public readonly record struct Point(double X, double Y)
{
    /// <summary>The origin of the frame.</summary>
    public static Point Origin => default;

    /// <summary>Both coordinates are finite numbers.</summary>
    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y);

    /// <summary>Distance to another point, in millimetres.</summary>
    public double DistanceTo(Point other) => (other - this).Length;

    /// <summary>True when the other point is no farther than <paramref name="toleranceMm"/>.</summary>
    public bool IsWithin(double toleranceMm, Point other) => (other - this).LengthSquared <= toleranceMm * toleranceMm;

    /// <summary>The point halfway to another.</summary>
    public Point MidpointTo(Point other) => new((X + other.X) / 2, (Y + other.Y) / 2);

    /// <summary>This point turned counter-clockwise about a centre.</summary>
    public Point RotatedAbout(Point centre, Angle by) => centre + (this - centre).Rotated(by);

    /// <summary>The displacement from <paramref name="b"/> to <paramref name="a"/>.</summary>
    public static Vector operator -(Point a, Point b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>A point moved by a displacement.</summary>
    public static Point operator +(Point a, Vector by) => new(a.X + by.X, a.Y + by.Y);

    /// <summary>A point moved back by a displacement.</summary>
    public static Point operator -(Point a, Vector by) => new(a.X - by.X, a.Y - by.Y);

    /// <summary>Both coordinates, as <c>(3, -4)</c>. In the invariant culture, for logs and tests.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"({X}, {Y})");
}
