using System.Collections.Immutable;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances.Chance;

namespace Flushback.Mechanism.Tolerances;

/// <summary>What random parts of a knife read. Millimetres, radians, newtons, MPa.</summary>
public sealed record ToleranceReport
{
    /// <summary>The knife as drawn.</summary>
    public required Placement Placement { get; init; }

    /// <summary>What varied and how.</summary>
    public required ToleranceSettings Settings { get; init; }

    /// <summary>The tolerances and their dimensions.</summary>
    public required ToleranceList List { get; init; }

    /// <summary>What the knife reads as drawn.</summary>
    public required PartReading AsDrawn { get; init; }

    /// <summary>How each outcome answers to each dimension.</summary>
    public required ImmutableArray<Derivatives> Derivatives { get; init; }

    /// <summary>The parts, in the order of their numbers.</summary>
    public required ImmutableArray<PartReading> Parts { get; init; }

    /// <summary>How many there are of each kind.</summary>
    public required PartCounts Counts { get; init; }

    /// <summary>Share of the parts that are assembled, rest at every stop and read within the window at each.</summary>
    public required CountedShare Within { get; init; }

    /// <summary>How each outcome is spread.</summary>
    public required ImmutableArray<Spread> Spreads { get; init; }

    /// <summary>What tightening each tolerance would bring, most first.</summary>
    public required ImmutableArray<Tightening> Tightenings { get; init; }

    /// <summary>How well the parts that were really bent agree with the derivatives; null without the handle.</summary>
    public BentComparison? Bent { get; init; }

    /// <summary>The spread of an outcome; null when the knife does not have it.</summary>
    public Spread? SpreadOf(Outcome outcome) => Spreads.FirstOrDefault(spread => spread.Of == outcome);
}

/// <summary>How many parts there are of each kind; a part without rest at two stops counts at both.</summary>
/// <param name="All">Parts drawn.</param>
/// <param name="NotAssembled">Those that can not be drawn, or whose blade and spring do not go together.</param>
/// <param name="NoRestOpen">Assembled, but the blade does not rest open.</param>
/// <param name="NoRestHalfStop">Assembled, but no rest at the half stop.</param>
/// <param name="NoRestClosed">Assembled, but no rest closed.</param>
public readonly record struct PartCounts(
    int All,
    int NotAssembled,
    int NoRestOpen,
    int NoRestHalfStop,
    int NoRestClosed
);

/// <summary>How an outcome is spread over the parts.</summary>
/// <param name="Of">The outcome.</param>
/// <param name="AsDrawn">What the knife reads as drawn.</param>
/// <param name="Count">Parts that have it.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Deviation">Their standard deviation.</param>
/// <param name="LinearDeviation">
/// The standard deviation by the law of propagation, the root of the sum of (derivative times standard deviation) squared
/// (JCGM 100:2008, 5.1.2, equation 10). Far from <paramref name="Deviation"/>, derivatives do not tell the whole story.
/// </param>
/// <param name="Percentiles">At the percents of <see cref="Percents"/>.</param>
/// <param name="Within">Share of all parts in the window of this reading; null for what has none.</param>
public sealed record Spread(
    Outcome Of,
    double AsDrawn,
    int Count,
    double Mean,
    double Deviation,
    double LinearDeviation,
    ImmutableArray<double> Percentiles,
    CountedShare? Within
)
{
    /// <summary>The percents at which percentiles are told: the middle, and what holds 95 of a hundred parts.</summary>
    public static ImmutableArray<double> Percents { get; } = [2.5, 50, 97.5];
}

/// <summary>What tightening a tolerance would bring.</summary>
/// <param name="Tolerance">Which, by its place in the list.</param>
/// <param name="VarianceShares">
/// Its share of the variance of each outcome, in the order of the derivatives, from 0 to 1: its terms in the law of propagation
/// over the sum of all; 0 where nothing varies an outcome.
/// </param>
/// <param name="WithinIfHalved">
/// Share of the parts within targets with this tolerance halved: the parts drawn, their readings brought to half the
/// deviation by the derivatives.
/// </param>
public sealed record Tightening(int Tolerance, ImmutableArray<double> VarianceShares, CountedShare WithinIfHalved);

/// <summary>Parts whose spring was really bent, against what the derivatives say of them.</summary>
/// <param name="Count">How many were bent.</param>
/// <param name="Stuck">Those of them whose blade could not be turned.</param>
/// <param name="PullDifferenceN">Greatest difference of the pull, in newtons.</param>
/// <param name="StressDifferenceMpa">Greatest difference of the stress, in MPa.</param>
public readonly record struct BentComparison(int Count, int Stuck, double PullDifferenceN, double StressDifferenceMpa);
