namespace Flushback.Mechanism.Materials;

/// <summary>A value known only to lie between two others.</summary>
/// <param name="Low">The least it may be.</param>
/// <param name="High">The most it may be.</param>
public readonly record struct ValueRange(double Low, double High)
{
    /// <summary>Halfway between the two.</summary>
    public double Middle => (Low + High) / 2;

    /// <summary>Both ends scaled.</summary>
    public static ValueRange operator *(ValueRange range, double factor) =>
        new(range.Low * factor, range.High * factor);
}
