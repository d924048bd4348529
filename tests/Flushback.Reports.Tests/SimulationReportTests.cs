using System.Text.RegularExpressions;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

public sealed partial class SimulationReportTests
{
    [Theory]
    [MemberData(nameof(Simulations.Names), MemberType = typeof(Simulations))]
    public void The_text_is_as_it_was_looked_at(string name) =>
        GoldenFile.Matches(name + ".txt", Simulations.Text(name));

    [Theory]
    [MemberData(nameof(Simulations.Names), MemberType = typeof(Simulations))]
    public void The_page_is_as_it_was_looked_at(string name) =>
        GoldenFile.Matches(name + ".html", Simulations.Page(name));

    [Theory]
    [MemberData(nameof(Simulations.Names), MemberType = typeof(Simulations))]
    public void The_text_fits_the_terminal_and_the_table_has_a_row_a_pass(string name)
    {
        string text = Simulations.Text(name);

        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, TextReport.Columns));
        for (int pass = 1; pass <= Simulations.Of(name).Steps.Length; pass++)
        {
            Assert.Contains($"\n  {pass}  ", text, StringComparison.Ordinal);
            Assert.Contains($"\nPass {pass}: ", text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Simulations.Names), MemberType = typeof(Simulations))]
    public void The_page_escapes_the_name_repeats_no_id_and_names_no_address(string name)
    {
        string page = Simulations.Page(name);

        Assert.Contains("Wagtail &lt;no. 3&gt;", page, StringComparison.Ordinal);
        string[] ids = [.. Ids().Matches(page).Select(match => match.Groups[1].Value)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.DoesNotContain("src=", page, StringComparison.Ordinal);
        Assert.DoesNotContain(
            "http",
            page.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal),
            StringComparison.Ordinal
        );
    }

    [GeneratedRegex(" id=\"([^\"]+)\"")]
    private static partial Regex Ids();
}
