using System.Collections.Immutable;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Fitting;

/// <summary>A page as tried: whether it can be drawn, and what is wrong with it.</summary>
internal sealed record FitTrial
{
    /// <summary>The page.</summary>
    public required PatternParameters Parameters { get; init; }

    /// <summary>How far it got.</summary>
    public required FitStage Stage { get; init; }

    /// <summary>True when all that was asked of it could be told.</summary>
    public bool IsTold { get; init; }

    /// <summary>Pull at the nail nick, in newtons; NaN when it was not asked for, or cannot be told.</summary>
    public double PullN { get; init; } = double.NaN;

    /// <summary>Peak stress in MPa; NaN when it was not asked for, or cannot be told.</summary>
    public double StressMpa { get; init; } = double.NaN;

    /// <summary>What is wrong, and the stress where it has a limit, wrong or not.</summary>
    public required ImmutableArray<Shortfall> Shortfalls { get; init; }

    /// <summary>What is really wrong.</summary>
    public IEnumerable<Shortfall> Wrong => Shortfalls.Where(shortfall => shortfall.Measure is not <= 0);

    /// <summary>One of them, the worst where there are several of the kind; null when the trial does not have it.</summary>
    public Shortfall? Of(string key) =>
        Shortfalls.Where(shortfall => shortfall.Key == key).MaxBy(shortfall => shortfall.Measure);

    /// <summary>True when something that was wrong no longer is, as far as this trial got.</summary>
    public bool IsWithout(Shortfall wrong) => Stage >= wrong.Stage && Of(wrong.Key) is null or { Measure: <= 0 };
}
