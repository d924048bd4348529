using System.Globalization;

namespace Flushback.Geometry;

/// <summary>A displacement or a direction in the plane, in millimetres.</summary>
/// <remarks>Exact equality; <c>default</c> is the zero vector. Components are not checked for NaN: outlines are, when built.</remarks>
public readonly record struct Vector(double X, double Y)
{
    /// <summary>Length in millimetres.</summary>
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    /// <summary>Square of the length, in square millimetres.</summary>
    public double LengthSquared => (X * X) + (Y * Y);

    /// <summary>This vector turned a quarter turn counter-clockwise.</summary>
    public Vector Left => new(-Y, X);

    /// <summary>This vector turned a quarter turn clockwise.</summary>
    public Vector Right => new(Y, -X);

    /// <summary>The direction of this vector, in (-pi, pi]; zero for the zero vector.</summary>
    public Angle Direction => new(Math.Atan2(Y, X));

    /// <summary>The vector of length 1 in the same direction; NaN components for the zero vector.</summary>
    public Vector Normalized
    {
        get
        {
            double length = Length;
            return new Vector(X / length, Y / length);
        }
    }

    /// <summary>The unit vector in a direction.</summary>
    public static Vector FromDirection(Angle direction)
    {
        (double sin, double cos) = Math.SinCos(direction.Radians);
        return new Vector(cos, sin);
    }

    /// <summary>The scalar product, in square millimetres.</summary>
    public double Dot(Vector other) => (X * other.X) + (Y * other.Y);

    /// <summary>The z component of the vector product; positive when <paramref name="other"/> lies counter-clockwise of this one.</summary>
    public double Cross(Vector other) => (X * other.Y) - (Y * other.X);

    /// <summary>This vector turned counter-clockwise by an angle.</summary>
    public Vector Rotated(Angle by) => RotatedTo(FromDirection(by));

    /// <summary>This vector turned counter-clockwise by the angle of a unit vector from +x, which saves finding its sine and cosine.</summary>
    public Vector RotatedTo(Vector unit) => new((unit.X * X) - (unit.Y * Y), (unit.Y * X) + (unit.X * Y));

    /// <summary>Sum of two vectors.</summary>
    public static Vector operator +(Vector a, Vector b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Difference of two vectors.</summary>
    public static Vector operator -(Vector a, Vector b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>The opposite vector.</summary>
    public static Vector operator -(Vector a) => new(-a.X, -a.Y);

    /// <summary>A vector scaled by a factor.</summary>
    public static Vector operator *(Vector a, double factor) => new(a.X * factor, a.Y * factor);

    /// <summary>A vector scaled by a factor.</summary>
    public static Vector operator *(double factor, Vector a) => new(a.X * factor, a.Y * factor);

    /// <summary>Both components, as <c>[3, -4]</c>. In the invariant culture, for logs and tests.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"[{X}, {Y}]");
}
