using Flushback.Mechanism.Bench;

namespace Flushback.Patterns.Parameters;

/// <summary>What the dial is to read at the true rests; see <see cref="PatternLimits"/> for limits and meaning.</summary>
public sealed record ReadingParameters
{
    /// <summary>Open: how far the finished back stands over the handle's line. The dial is zeroed here.</summary>
    public double OpenMm { get; init; }

    /// <summary>Reading at the half stop.</summary>
    public double HalfStopMm { get; init; } = 5 * StopTargets.MmPerThou;

    /// <summary>Reading when closed.</summary>
    public double ClosedMm { get; init; } = 15 * StopTargets.MmPerThou;

    /// <summary>Blade angle at which the blade rests at the half stop.</summary>
    public double HalfStopRestDeg { get; init; } = 90;

    /// <summary>Blade angle at which the blade rests when closed.</summary>
    public double ClosedRestDeg { get; init; } = 180;
}
