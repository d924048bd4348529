namespace Flushback.Patterns.Parameters;

/// <summary>A page of dimensions from which a blade, its spring and the handle around them are drawn. Immutable.</summary>
/// <remarks>
/// Every number has its unit, limits and meaning in <see cref="PatternLimits"/>. A number that may be null follows from
/// the others when it is left out; <see cref="PatternLimit.Follows"/> says how.
/// </remarks>
public sealed record PatternParameters
{
    /// <summary>The pattern with nothing changed.</summary>
    public static PatternParameters Default { get; } = new();

    /// <summary>The handle: liners, scales, and the line the back is ground to.</summary>
    public HandleParameters Handle { get; init; } = new();

    /// <summary>Pivot, centre pin and rear pin.</summary>
    public PinParameters Pins { get; init; } = new();

    /// <summary>The tang with its faces, corners and kick.</summary>
    public TangParameters Tang { get; init; } = new();

    /// <summary>The backspring.</summary>
    public SpringParameters Spring { get; init; } = new();

    /// <summary>The blade in front of the tang.</summary>
    public BladeParameters Blade { get; init; } = new();

    /// <summary>What the dial is to read, and where the blade is to rest.</summary>
    public ReadingParameters Readings { get; init; } = new();

    /// <summary>What the shop leaves on the outlines.</summary>
    public StockParameters Stock { get; init; } = new();
}
