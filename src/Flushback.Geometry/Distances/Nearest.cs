using System.Globalization;

namespace Flushback.Geometry.Distances;

/// <summary>The shortest way between two shapes.</summary>
/// <remarks>
/// Where several pairs of points are equally near, one of them is given. Where the shapes cross or touch, the distance
/// is zero and both points are the same place. A distance says nothing of inside and outside: see
/// <see cref="Outline.SignedDistanceMm"/>.
/// </remarks>
/// <param name="DistanceMm">Distance in millimetres, never negative; infinite when one of the shapes has no edges.</param>
/// <param name="OnFirst">Where the way begins, on the first shape.</param>
/// <param name="OnSecond">Where the way ends, on the second shape.</param>
public readonly record struct Nearest(double DistanceMm, Point OnFirst, Point OnSecond)
{
    /// <summary>The answer when one of the shapes has no edges: infinitely far, between points that are not numbers.</summary>
    public static Nearest None { get; } =
        new(double.PositiveInfinity, new Point(double.NaN, double.NaN), new Point(double.NaN, double.NaN));

    /// <summary>The same way seen from the other shape.</summary>
    public Nearest Swapped => new(DistanceMm, OnSecond, OnFirst);

    /// <summary>The shorter of two ways; the first when they are equal.</summary>
    public static Nearest Shorter(in Nearest a, in Nearest b) => b.DistanceMm < a.DistanceMm ? b : a;

    internal static Nearest From(Point first, Point second) => new(first.DistanceTo(second), first, second);

    /// <summary>The distance and both points. In the invariant culture, for logs and tests.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{DistanceMm} mm from {OnFirst} to {OnSecond}");
}
