using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Pairs;

/// <summary>How two blades share a handle.</summary>
public enum Arrangement
{
    /// <summary>One blade on one spring.</summary>
    OneBlade,

    /// <summary>A blade at either end of one spring, whose both ends are noses; the centre pin holds it between them.</summary>
    SharedSpring,

    /// <summary>Two springs side by side, each under its own blade.</summary>
    TwoSprings,
}

/// <summary>A page of dimensions with a second blade. Immutable.</summary>
public sealed record PairParameters
{
    /// <summary>Handle, pins, the first blade and its spring.</summary>
    public required PatternParameters First { get; init; }

    /// <summary>How the two share the handle; not <see cref="Arrangement.OneBlade"/>.</summary>
    public required Arrangement Arrangement { get; init; }

    /// <summary>The second blade.</summary>
    public SecondBladeParameters Second { get; init; } = new();
}

/// <summary>
/// The second blade, seen from its own pivot: its frame is mirrored where it opens at the other end. What is left out is as
/// on the first blade, or follows.
/// </summary>
public sealed record SecondBladeParameters
{
    /// <summary>True when it opens at the other end of the handle; always so on a shared spring.</summary>
    public bool AtOtherEnd { get; init; } = true;

    /// <summary>Its tang.</summary>
    public TangParameters Tang { get; init; } = new();

    /// <summary>Its blade in front of the tang.</summary>
    public BladeParameters Blade { get; init; } = new();

    /// <summary>What the dial is to read over it.</summary>
    public ReadingParameters Readings { get; init; } = new();

    /// <summary>Distance from its pivot to the end of the handle it opens at; null for as far as its tang asks for.</summary>
    public double? FrontMm { get; init; }

    /// <summary>Thickness of the first blade, in millimetres.</summary>
    public double FirstThicknessMm { get; init; } = 1.8;

    /// <summary>Thickness of the second blade, in millimetres.</summary>
    public double ThicknessMm { get; init; } = 1.8;

    /// <summary>Thickness of the liner between two springs; 0 for none. On a shared spring the blades lie in one well.</summary>
    public double LinerBetweenMm { get; init; } = 0.5;

    /// <summary>Least wanted distance between the blades, in millimetres.</summary>
    public double LeastClearanceMm { get; init; } = 0.2;
}
