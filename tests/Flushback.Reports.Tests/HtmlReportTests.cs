using System.Text.RegularExpressions;
using Flushback.Mechanism.Bench;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

public sealed partial class HtmlReportTests
{
    [Theory]
    [MemberData(nameof(Cases.Names), MemberType = typeof(Cases))]
    public void The_page_is_the_one_kept(string name) => GoldenFile.Matches($"{name}.html", Cases.Page(name));

    [Fact]
    public void A_name_is_escaped_wherever_it_stands()
    {
        string page = HtmlReport.Write("<script>alert('\"&')</script>", SampleReports.InOrder(), []);

        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;script&gt;", page, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_mended_is_escaped() =>
        Assert.DoesNotContain(
            "<b>",
            HtmlReport.Write("Jack", SampleReports.InOrder(), ["Layer <b>cut</b> was left aside."]),
            StringComparison.Ordinal
        );

    [Theory]
    [MemberData(nameof(Cases.Names), MemberType = typeof(Cases))]
    public void The_page_needs_nothing_from_outside(string name)
    {
        string page = Cases.Page(name).Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal);

        Assert.DoesNotContain("//", page, StringComparison.Ordinal);
        Assert.DoesNotContain("url(", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.DoesNotContain("src=", page, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Cases.Names), MemberType = typeof(Cases))]
    public void Every_id_is_given_once_and_every_reference_finds_one(string name)
    {
        string page = Cases.Page(name);
        string[] ids = [.. IdAttribute().Matches(page).Select(match => match.Groups[1].Value)];
        IEnumerable<string> referred = LabelledBy().Matches(page).SelectMany(match => match.Groups[1].Value.Split(' '));

        Assert.Equal(ids.Distinct(), ids);
        Assert.Empty(referred.Except(ids));
    }

    [Fact]
    public void A_knife_without_a_half_stop_has_two_pictures_and_says_so()
    {
        string page = HtmlReport.Write("Jack", SampleReports.WithoutHalfStop(), []);

        Assert.Contains("id=\"stop-open\"", page, StringComparison.Ordinal);
        Assert.Contains("id=\"stop-closed\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("id=\"stop-half-stop\"", page, StringComparison.Ordinal);
        Assert.Contains("This tang has no half stop", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_handle_the_page_says_that_the_tip_is_not_known() =>
        Assert.Contains(
            "not known: no handle outline was given",
            HtmlReport.Write("Jack", SampleReports.WithoutHandle(), []),
            StringComparison.Ordinal
        );

    [Fact]
    public void The_same_report_gives_the_same_bytes()
    {
        BenchReport report = SampleReports.ReadsBadly();

        Assert.Equal(
            HtmlReport.Write("Jack", report, SampleReports.Repairs),
            HtmlReport.Write("Jack", report, SampleReports.Repairs)
        );
    }

    [GeneratedRegex(" id=\"([^\"]*)\"")]
    private static partial Regex IdAttribute();

    [GeneratedRegex(" aria-labelledby=\"([^\"]*)\"")]
    private static partial Regex LabelledBy();
}
