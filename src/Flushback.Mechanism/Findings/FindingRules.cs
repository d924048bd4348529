using System.Collections.Immutable;
using Flushback.Mechanism.Bench;

namespace Flushback.Mechanism.Findings;

/// <summary>Turns a report into what a maker should look at.</summary>
internal static class FindingRules
{
    /// <summary>All findings, worst first.</summary>
    public static ImmutableArray<Finding> Judge(BenchReport report) => [];
}
