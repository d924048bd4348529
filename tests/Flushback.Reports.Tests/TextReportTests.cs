using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

public sealed class TextReportTests
{
    [Theory]
    [MemberData(nameof(Cases.Names), MemberType = typeof(Cases))]
    public void The_text_is_the_one_kept(string name) => GoldenFile.Matches($"{name}.txt", Cases.Text(name));

    [Theory]
    [MemberData(nameof(Cases.Names), MemberType = typeof(Cases))]
    public void No_line_is_wider_than_the_terminal(string name) => FitsTheTerminal(Cases.Text(name));

    [Fact]
    public void A_long_name_is_broken_into_lines_and_keeps_every_letter()
    {
        string text = TextReport.Write(new string('W', 250), SampleReports.InOrder(), []);

        FitsTheTerminal(text);
        Assert.Equal(250, text.Split('=')[0].Count(letter => letter == 'W'));
    }

    [Fact]
    public void Many_findings_are_all_told_in_their_order()
    {
        string[] messages =
        [
            .. Enumerable.Range(1, 60).Select(i => FormattableString.Invariant($"Matter number {i} of many.")),
        ];
        BenchReport report = SampleReports.InOrder() with
        {
            Findings =
            [
                .. messages.Select(message => new Finding(
                    "SOME_CODE",
                    Severity.Warning,
                    message,
                    string.Join(" ", Enumerable.Repeat("Take a little off and look again.", 8))
                )),
            ],
        };

        string text = TextReport.Write("Jack", report, []);

        FitsTheTerminal(text);
        Assert.Contains("Needs work: 60 warnings.", text, StringComparison.Ordinal);
        int[] places = [.. messages.Select(message => text.IndexOf(message, StringComparison.Ordinal))];
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void A_reading_has_its_sign_in_both_units()
    {
        string text = TextReport.Write(
            "Jack",
            new StraightSpringBench(new StraightSpringKnife(-0.0508, 0.381)).Report(new BenchSettings(), default),
            []
        );

        // 1 in is 25.4 mm by definition, so -0.0508 mm is -2.0 thousandths.
        Assert.Matches(@"half stop +-2\.0 +-0\.051 ", text);
        Assert.Matches(@"closed +\+15\.0 +\+0\.381 ", text);
        Assert.Matches(@"open +\+0\.0 +\+0\.000 ", text);
    }

    [Fact]
    public void A_name_cannot_steer_the_terminal()
    {
        string text = TextReport.Write("Jack\u001b[31m\r\n\u202eknife", SampleReports.InOrder(), ["mended\u0007"]);

        Assert.StartsWith("Jack[31mknife\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain(text, character => char.IsControl(character) && character != '\n');
    }

    [Fact]
    public void The_text_is_seven_bit_but_for_the_name()
    {
        string text = TextReport.Write("Jack", SampleReports.ReadsBadly(), SampleReports.Repairs);

        Assert.DoesNotContain(text, character => character > '~');
    }

    [Fact]
    public void A_knife_without_a_name_is_called_so() =>
        Assert.StartsWith(
            "Unnamed knife\n",
            TextReport.Write(" ", SampleReports.InOrder(), []),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_stop_without_a_rest_says_so_and_where_it_was_read()
    {
        string text = TextReport.Write("Jack", SampleReports.DoesNotRest(), []);

        Assert.Contains("Needs work: not every reading lies in its window.", text, StringComparison.Ordinal);
        Assert.Matches(@"closed +\+47\.2 .* no rest \(180\) +does not rest", text);
        Assert.Contains("Closed: No contact found here.", text, StringComparison.Ordinal);
        Assert.Contains("Read with the blade at 165.00 deg", text, StringComparison.Ordinal);
    }

    private static void FitsTheTerminal(string text) =>
        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, TextReport.Columns));
}
