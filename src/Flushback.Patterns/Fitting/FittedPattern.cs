using System.Collections.Immutable;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Fitting;

/// <summary>What came of a fit.</summary>
public sealed record FittedPattern
{
    /// <summary>True when everything that was wanted is reached.</summary>
    public required bool IsReached { get; init; }

    /// <summary>What was found, in one sentence for the maker.</summary>
    public required string Sentence { get; init; }

    /// <summary>The page with the changes made; where not everything is reached, that of the nearest knife that can be drawn.</summary>
    public required PatternParameters Parameters { get; init; }

    /// <summary>Every number that is another now, filled in before and after, in the order of the table.</summary>
    public required ImmutableArray<ParameterChange> Changes { get; init; }

    /// <summary>
    /// How much was changed: the root of the sum of squares over the numbers that were free, each change counted in percent of
    /// the range between its limits. The fit makes this the least.
    /// </summary>
    public required double ChangePercent { get; init; }

    /// <summary>Pull at the nail nick, in newtons; null when the handle was left out.</summary>
    public double? PullN { get; init; }

    /// <summary>Peak stress of the spring, in MPa; null when the handle was left out.</summary>
    public double? PeakStressMpa { get; init; }

    /// <summary>Paths of the numbers that stand in the way, where not everything is reached.</summary>
    public required ImmutableArray<string> InTheWay { get; init; }
}

/// <summary>A number of a pattern that a fit changed.</summary>
/// <param name="Limit">Which.</param>
/// <param name="From">What it was, in its unit.</param>
/// <param name="To">What it is now.</param>
/// <param name="IsFree">True when it was chosen; false when it follows from those that were.</param>
public readonly record struct ParameterChange(PatternLimit Limit, double From, double To, bool IsFree);
