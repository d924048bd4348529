using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>The sample reports by name, for tests that run over all of them.</summary>
internal static class Cases
{
    private static readonly Dictionary<string, Func<BenchReport>> OnTheBench = new()
    {
        ["in-order"] = SampleReports.InOrder,
        ["reads-badly"] = SampleReports.ReadsBadly,
        ["without-half-stop"] = SampleReports.WithoutHalfStop,
        ["does-not-rest"] = SampleReports.DoesNotRest,
        ["without-handle"] = SampleReports.WithoutHandle,
    };

    private static readonly Dictionary<string, (Func<BenchReport> Bench, Func<HandleReport> Handle)> InTheHandle = new()
    {
        ["sound-in-the-handle"] = (SampleReports.InOrder, SampleHandles.Sound),
        ["sets-in-the-handle"] = (SampleReports.ReadsBadly, SampleHandles.TakesASet),
    };

    /// <summary>All of them.</summary>
    public static TheoryData<string> Names => [.. OnTheBench.Keys, .. InTheHandle.Keys];

    /// <summary>Those without the handle.</summary>
    public static TheoryData<string> BenchNames => [.. OnTheBench.Keys];

    /// <summary>Those with it.</summary>
    public static TheoryData<string> HandleNames => [.. InTheHandle.Keys];

    public static BenchReport Report(string name) =>
        InTheHandle.TryGetValue(name, out var both) ? both.Bench() : OnTheBench[name]();

    public static HandleReport? Handle(string name) =>
        InTheHandle.TryGetValue(name, out var both) ? both.Handle() : null;

    public static string Text(string name) =>
        TextReport.Write("Drover's jack", Report(name), SampleReports.Repairs, Handle(name));

    public static string Page(string name) =>
        HtmlReport.Write("Drover's jack", Report(name), SampleReports.Repairs, Handle(name));
}
