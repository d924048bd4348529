using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Bench.Solving;

namespace Flushback.Mechanism.Findings;

/// <summary>Turns a report into what a maker should look at.</summary>
internal static class FindingRules
{
    /// <summary>All findings, worst first; equals in the order open, half stop, closed, whole knife.</summary>
    /// <param name="report">What the bench shows.</param>
    /// <param name="solver">The solver of that knife, for how the parts lie as drawn.</param>
    public static ImmutableArray<Finding> Judge(BenchReport report, BenchSolver solver) =>
        [
            .. report
                .Stops.SelectMany(stop => StopRules.Judge(stop, report.Settings))
                .Concat(KnifeRules.Judge(report, solver))
                .OrderByDescending(finding => finding.Severity),
        ];
}
