using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

public sealed class HtmlReportTests
{
    [Theory]
    [MemberData(nameof(Cases.Names), MemberType = typeof(Cases))]
    public void The_page_is_the_one_kept(string name) =>
        GoldenFile.Matches(
            $"{name}.html",
            HtmlReport.Write("Drover's jack", Cases.Report(name), SampleReports.Repairs)
        );
}
