using System.Globalization;

namespace Flushback.Geometry;

/// <summary>An angle, kept in radians; counter-clockwise is positive unless the member that returns it says otherwise.</summary>
/// <remarks>Not wrapped: 360 degrees and 0 are different values. <c>default</c> is zero.</remarks>
public readonly record struct Angle(double Radians) : IComparable<Angle>
{
    /// <summary>Degrees in one radian.</summary>
    public const double DegreesPerRadian = 180 / Math.PI;

    /// <summary>No turn.</summary>
    public static Angle Zero => default;

    /// <summary>The same angle in degrees.</summary>
    public double Degrees => Radians * DegreesPerRadian;

    /// <summary>The same direction wrapped to (-pi, pi].</summary>
    public Angle Signed
    {
        get
        {
            double wrapped = Math.IEEERemainder(Radians, Math.Tau);
            return new Angle(wrapped <= -Math.PI ? wrapped + Math.Tau : wrapped);
        }
    }

    /// <summary>The same direction wrapped to [0, 2 pi).</summary>
    public Angle Positive
    {
        get
        {
            double wrapped = Radians % Math.Tau;
            wrapped = wrapped < 0 ? wrapped + Math.Tau : wrapped;

            // A hair below zero rounds to the full turn, which is no turn.
            return new Angle(wrapped < Math.Tau ? wrapped : 0);
        }
    }

    /// <summary>An angle given in degrees.</summary>
    public static Angle FromDegrees(double degrees) => new(degrees / DegreesPerRadian);

    /// <inheritdoc/>
    public int CompareTo(Angle other) => Radians.CompareTo(other.Radians);

    /// <summary>Sum of two angles.</summary>
    public static Angle operator +(Angle a, Angle b) => new(a.Radians + b.Radians);

    /// <summary>Difference of two angles.</summary>
    public static Angle operator -(Angle a, Angle b) => new(a.Radians - b.Radians);

    /// <summary>The opposite turn.</summary>
    public static Angle operator -(Angle a) => new(-a.Radians);

    /// <summary>An angle scaled by a factor.</summary>
    public static Angle operator *(Angle a, double factor) => new(a.Radians * factor);

    /// <summary>True when a is smaller.</summary>
    public static bool operator <(Angle a, Angle b) => a.Radians < b.Radians;

    /// <summary>True when a is larger.</summary>
    public static bool operator >(Angle a, Angle b) => a.Radians > b.Radians;

    /// <summary>True when a is no larger.</summary>
    public static bool operator <=(Angle a, Angle b) => a.Radians <= b.Radians;

    /// <summary>True when a is no smaller.</summary>
    public static bool operator >=(Angle a, Angle b) => a.Radians >= b.Radians;

    /// <summary>In degrees, as <c>90 deg</c>. In the invariant culture, for logs and tests.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Degrees} deg");
}
