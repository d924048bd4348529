using System.Globalization;
using System.Text.RegularExpressions;
using Flushback.Mechanism.Tolerances;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

public sealed partial class ToleranceReportTests
{
    [Theory]
    [MemberData(nameof(Studies.Names), MemberType = typeof(Studies))]
    public void The_text_is_as_it_was_looked_at(string name) => GoldenFile.Matches(name + ".txt", Studies.Text(name));

    [Theory]
    [MemberData(nameof(Studies.Names), MemberType = typeof(Studies))]
    public void The_page_is_as_it_was_looked_at(string name) => GoldenFile.Matches(name + ".html", Studies.Page(name));

    [Fact]
    public void The_parts_are_as_they_were_looked_at() =>
        GoldenFile.Matches("tolerance-lost.csv", SpreadCsv.Write(Studies.Of("tolerance-lost")));

    [Theory]
    [MemberData(nameof(Studies.Names), MemberType = typeof(Studies))]
    public void The_text_fits_the_terminal(string name) =>
        Assert.All(
            Studies.Text(name).Split('\n'),
            line =>
            {
                Assert.InRange(line.Length, 0, TextReport.Columns);
                Assert.All(line, character => Assert.InRange(character, ' ', '~'));
            }
        );

    [Theory]
    [MemberData(nameof(Studies.Names), MemberType = typeof(Studies))]
    public void The_page_escapes_the_name_repeats_no_id_and_names_no_address(string name)
    {
        string page = Studies.Page(name);

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

    [Fact]
    public void The_parts_table_has_a_row_a_part_with_its_state_and_empty_fields_for_what_it_has_not()
    {
        ToleranceReport report = Studies.Of("tolerance-lost");
        string[][] rows = [.. SpreadCsv.Write(report).TrimEnd().Split("\r\n").Skip(1).Select(line => line.Split(','))];

        Assert.Equal(report.Parts.Length, rows.Length);
        Assert.Equal(report.Counts.NotAssembled, rows.Count(row => row[1] == "not assembled"));
        Assert.All(rows.Where(row => row[1] == "not assembled"), row => Assert.All(row[2..], Assert.Empty));
        foreach ((PartReading part, string[] row) in report.Parts.Zip(rows).Where(pair => pair.First.Rests))
        {
            Assert.Equal(part.Closed.LiftMm, double.Parse(row[4], CultureInfo.InvariantCulture), 1e-6);
            Assert.Equal(part.Closed.RestAngle.Degrees, double.Parse(row[7], CultureInfo.InvariantCulture), 1e-6);
        }
    }

    [GeneratedRegex(" id=\"([^\"]+)\"")]
    private static partial Regex Ids();
}
