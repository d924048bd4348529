using System.Text.RegularExpressions;
using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests;

/// <summary>Colour is for a terminal; a terminal is made with script(1), which keeps what is written to it.</summary>
public sealed partial class ColourTests : IDisposable
{
    private const string Red = "\e[1;31m";
    private readonly Workbench _bench = new();

    [Fact]
    public async Task A_terminal_shows_headings_and_findings_in_colour_and_no_other_word_than_a_pipe()
    {
        string drawing = _bench.PutFlawed();

        string seen = await OnTerminalAsync($"flushback check {drawing}");
        string piped = await Shell.RunAsync(_bench, "bash", $"flushback check {drawing} || true", ("TERM", "xterm"));

        Assert.Contains("\e[1mDial readings\e[0m", seen, StringComparison.Ordinal);
        Assert.Contains("\e[1;33mWARNING:\e[0m", seen, StringComparison.Ordinal);
        Assert.DoesNotContain('\e', piped);
        Assert.Equal(piped, Colours().Replace(seen, ""));
    }

    [Theory]
    [InlineData("NO_COLOR", "1")]
    [InlineData("TERM", "dumb")]
    public async Task A_terminal_without_colour_gets_none(string name, string value)
    {
        string seen = await OnTerminalAsync($"flushback check {_bench.PutFlawed()}", (name, value));

        Assert.Contains("WARNING:", seen, StringComparison.Ordinal);
        Assert.DoesNotMatch(Colours(), seen);
    }

    [Fact]
    public async Task Json_has_no_colour_on_a_terminal_either()
    {
        string seen = await OnTerminalAsync($"flushback check {_bench.PutFlawed()} --json");

        Assert.DoesNotMatch(Colours(), seen);
        Assert.NotEmpty(Wire.CheckReport.Parser.ParseJson(seen).Findings);
    }

    [Fact]
    public async Task A_complaint_begins_in_red_on_a_terminal_only()
    {
        Assert.StartsWith(
            $"{Red}flushback:",
            await OnTerminalAsync("flushback check none.dxf"),
            StringComparison.Ordinal
        );
        Assert.StartsWith("flushback:", (await Client.RunAsync("check", "none.dxf")).Error, StringComparison.Ordinal);
    }

    public void Dispose() => _bench.Dispose();

    private async Task<string> OnTerminalAsync(string command, params (string Name, string Value)[] variables)
    {
        string seen = await Shell.RunAsync(
            _bench,
            "bash",
            $"script --quiet --command '{command}' /dev/null || true",
            [("TERM", "xterm"), ("NO_COLOR", ""), .. variables]
        );

        // The runtime sets the keys of the terminal, and a terminal ends its lines with two characters.
        return Keys().Replace(seen, "").Replace("\r\n", "\n", StringComparison.Ordinal);
    }

    [GeneratedRegex(@"\e\[[0-9;]*m")]
    private static partial Regex Colours();

    [GeneratedRegex(@"\e\[\?1[hl]|\e[=>]")]
    private static partial Regex Keys();
}
