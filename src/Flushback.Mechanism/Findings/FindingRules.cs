using System.Collections.Immutable;
using Flushback.Mechanism.Bench;

namespace Flushback.Mechanism.Findings;

/// <summary>Turns a report into what a maker should look at.</summary>
internal static class FindingRules
{
    /// <summary>All findings, worst first; equals in the order open, half stop, closed, whole knife.</summary>
    public static ImmutableArray<Finding> Judge(BenchReport report) =>
        [
            .. report
                .Stops.SelectMany(stop => StopRules.Judge(stop, report.Settings))
                .Concat(KnifeRules.Judge(report))
                .OrderByDescending(finding => finding.Severity),
        ];
}
