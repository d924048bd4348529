using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Tolerances;

/// <summary>How dimensions are spread between their limits.</summary>
public enum Distribution
{
    /// <summary>Anywhere between the limits, each place as likely.</summary>
    /// <remarks>JCGM 100:2008 (GUM), 4.3.7: what to take where only limits are known; standard deviation a / sqrt(3).</remarks>
    Uniform,

    /// <summary>Normal about the middle, the limits at three standard deviations, so that 0.27 percent lie beyond them.</summary>
    Normal,
}

/// <summary>What may vary, how, and how many parts are drawn. Immutable; every default is stated.</summary>
public sealed record ToleranceSettings
{
    /// <summary>How far off every pin and hole may lie, forward and up each, in millimetres; 0 not at all.</summary>
    public double PinsMm { get; init; }

    /// <summary>Largest play of a hole on its pin, in millimetres on the diameter; 0 none.</summary>
    public double ClearanceMm { get; init; }

    /// <summary>How far out or in every face may lie anywhere along it, in millimetres; 0 not at all.</summary>
    public double ProfileMm { get; init; }

    /// <summary>Profiles of single faces, in place of <see cref="ProfileMm"/>.</summary>
    public ImmutableDictionary<Site, double> FaceProfilesMm { get; init; } = ImmutableDictionary<Site, double>.Empty;

    /// <summary>How far off the spring's depth may be, in millimetres; only in the handle.</summary>
    public double DepthMm { get; init; }

    /// <summary>How far off the spring's width may be, in millimetres; only in the handle.</summary>
    public double WidthMm { get; init; }

    /// <summary>How far off the preload may be, in millimetres; only in the handle.</summary>
    public double PreloadMm { get; init; }

    /// <summary>How dimensions are spread.</summary>
    /// <value>Default: uniform, since a tolerance says no more than its limits (JCGM 100:2008, 4.3.7).</value>
    public Distribution Distribution { get; init; } = Distribution.Uniform;

    /// <summary>How many parts are drawn and solved.</summary>
    /// <value>Default: 10,000.</value>
    public int Parts { get; init; } = 10_000;

    /// <summary>Which parts are drawn; the same seed gives the same ones.</summary>
    /// <value>Default: 1.</value>
    public ulong Seed { get; init; } = 1;

    /// <summary>Targets and tolerances of the readings.</summary>
    public BenchSettings Bench { get; init; } = new();

    /// <summary>Spring and steel, to have pull and stress told; null for the bench alone.</summary>
    public HandleSettings? Handle { get; init; }
}
