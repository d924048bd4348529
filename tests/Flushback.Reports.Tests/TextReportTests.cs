using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

public sealed class TextReportTests
{
    [Theory]
    [MemberData(nameof(Cases.Names), MemberType = typeof(Cases))]
    public void The_text_is_the_one_kept(string name) =>
        GoldenFile.Matches($"{name}.txt", TextReport.Write("Drover's jack", Cases.Report(name), SampleReports.Repairs));
}
