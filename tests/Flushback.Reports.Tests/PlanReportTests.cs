using System.Text.RegularExpressions;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

public sealed partial class PlanReportTests
{
    [Theory]
    [MemberData(nameof(Plans.Names), MemberType = typeof(Plans))]
    public void The_text_is_as_it_was_looked_at(string name) => GoldenFile.Matches(name + ".txt", Plans.Text(name));

    [Theory]
    [MemberData(nameof(Plans.Names), MemberType = typeof(Plans))]
    public void The_page_is_as_it_was_looked_at(string name) => GoldenFile.Matches(name + ".html", Plans.Page(name));

    [Theory]
    [MemberData(nameof(Plans.Names), MemberType = typeof(Plans))]
    public void The_card_is_as_it_was_looked_at(string name) =>
        GoldenFile.Matches(name + "-card.html", Plans.Card(name));

    [Theory]
    [MemberData(nameof(Plans.Names), MemberType = typeof(Plans))]
    public void The_text_fits_the_terminal_and_the_table_has_a_row_a_pass(string name)
    {
        string text = Plans.Text(name);
        PlanReport plan = Plans.Of(name);

        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, TextReport.Columns));
        for (int pass = 1; pass <= plan.Simulation.Steps.Length; pass++)
        {
            // Once with what to do, once with what to expect.
            Assert.Equal(2, Regex.Count(text, $"^ +{pass}  [a-z]", RegexOptions.Multiline));
        }
    }

    [Theory]
    [MemberData(nameof(Plans.Names), MemberType = typeof(Plans))]
    public void Page_and_card_escape_the_name_repeat_no_id_and_name_no_address(string name)
    {
        foreach (string page in (string[])[Plans.Page(name), Plans.Card(name)])
        {
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
    }

    [Theory]
    [MemberData(nameof(Plans.Names), MemberType = typeof(Plans))]
    public void Every_obstacle_and_remedy_is_told_in_full(string name)
    {
        string text = Regex.Replace(Plans.Text(name), "\\s+", " ");
        foreach (PlanObstacle obstacle in Plans.Of(name).Obstacles)
        {
            Assert.All(
                [obstacle.Sentence, .. obstacle.Remedies],
                sentence => Assert.Contains(sentence, text, StringComparison.Ordinal)
            );
        }
    }

    [Fact]
    public void The_fixtures_are_what_their_names_say()
    {
        Assert.True(Plans.Of("plan-reached").ReachesTargets);
        Assert.True(Plans.Of(Plans.Most).Simulation.Steps.Length >= 8);
        Assert.Equal(2, Plans.Of(Plans.Most).Simulation.Steps.Count(step => step.Pass is ReliefArc));
        Assert.NotNull(Plans.Of("plan-measured").Measured);
        Assert.True(Plans.Of("plan-falls-short").Obstacles.Length >= 2);
        Assert.Empty(Plans.Of("plan-nothing-to-do").Simulation.Steps);
        Assert.False(Plans.Of("plan-no-half-stop").Simulation.Start.Readings.HasHalfStop);
    }

    [Theory]
    [MemberData(nameof(Plans.Names), MemberType = typeof(Plans))]
    public void The_card_warns_of_eyes_dust_heat_the_spring_and_the_law(string name)
    {
        string card = Plans.Card(name);
        Assert.All(
            (string[])["glasses", "respirator", "Ground steel is hot", "flies when it slips", "ask locally"],
            word => Assert.Contains(word, card, StringComparison.Ordinal)
        );
    }

    [GeneratedRegex(" id=\"([^\"]+)\"")]
    private static partial Regex Ids();
}
