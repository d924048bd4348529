namespace Flushback.Patterns.Parameters;

/// <summary>What is left on the outlines for the shop; see <see cref="PatternLimits"/> for limits and meaning.</summary>
public sealed record StockParameters
{
    /// <summary>Stock all around the blade, ground off after heat treatment.</summary>
    public double BladeMm { get; init; }

    /// <summary>Stock all around the spring, ground off after heat treatment.</summary>
    public double SpringMm { get; init; }

    /// <summary>Width of the kerf of the machine that cuts; recorded, the outlines are drawn without it.</summary>
    public double KerfMm { get; init; }
}
