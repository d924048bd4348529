using System.Collections.Immutable;

namespace Flushback.Patterns.Fitting;

/// <summary>What is wrong with a trial.</summary>
/// <param name="Key">What it is, the same from trial to trial.</param>
/// <param name="Paths">The numbers that may take it away; empty when no number of the page does.</param>
/// <param name="Measure">
/// By how much, as a share of what is allowed; null when it is only known to be wrong. Of the stress the measure is negative
/// where it is borne.
/// </param>
/// <param name="Sentence">What is wrong, in one sentence.</param>
/// <param name="Stage">When it shows.</param>
internal sealed record Shortfall(
    string Key,
    ImmutableArray<string> Paths,
    double? Measure,
    string Sentence,
    FitStage Stage
);

/// <summary>How far a page gets, one after the other.</summary>
internal enum FitStage
{
    /// <summary>Its numbers do not go together.</summary>
    Layout,

    /// <summary>What is drawn from them is no knife that reads as wanted.</summary>
    Drawing,

    /// <summary>There is a knife, which is checked.</summary>
    Check,
}
