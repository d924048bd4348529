using Flushback.Mechanism.Bench;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>The sample reports by name, for tests that run over all of them.</summary>
internal static class Cases
{
    private static readonly Dictionary<string, Func<BenchReport>> All = new()
    {
        ["in-order"] = SampleReports.InOrder,
        ["reads-badly"] = SampleReports.ReadsBadly,
        ["without-half-stop"] = SampleReports.WithoutHalfStop,
        ["does-not-rest"] = SampleReports.DoesNotRest,
        ["without-handle"] = SampleReports.WithoutHandle,
    };

    public static TheoryData<string> Names => [.. All.Keys];

    public static BenchReport Report(string name) => All[name]();
}
