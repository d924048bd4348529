using System.Text.RegularExpressions;
using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests;

/// <summary>What every command has, whichever commands there are.</summary>
public sealed partial class EveryCommandTests
{
    [Fact]
    public async Task The_list_of_commands_has_a_line_each()
    {
        string help = (await Client.RunAsync("--help")).Output;
        string[] lines = help[help.IndexOf("Commands:", StringComparison.Ordinal)..].TrimEnd().Split('\n');

        Assert.Equal(Commands(help).Length, lines.Length - 1);
        Assert.All(lines[1..], line => Assert.EndsWith(".", line, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Every_command_has_help_with_examples_of_itself()
    {
        string[] commands = Commands((await Client.RunAsync("--help")).Output);

        Assert.Contains("check", commands);
        foreach (string command in commands)
        {
            string help = (await Client.RunAsync(command, "--help")).Output;
            string examples = help[help.IndexOf("Examples:", StringComparison.Ordinal)..];
            Assert.Contains($"flushback {command} ", examples, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Every_command_that_asks_a_service_can_ask_one_elsewhere_and_print_json_or_nothing()
    {
        foreach (string command in Commands((await Client.RunAsync("--help")).Output).Except(["completion"]))
        {
            string help = (await Client.RunAsync(command, "--help")).Output;
            string[] options =
            [
                "--server",
                "--token-file",
                "--authority-file",
                "--certificate-file",
                "--key-file",
                "--deadline",
                "--json",
                "--quiet",
                "--verbose",
            ];
            Assert.All(options, option => Assert.Contains($"  {option} ", help, StringComparison.Ordinal));
        }
    }

    private static string[] Commands(string help) =>
        [
            .. CommandNames()
                .Matches(help[help.IndexOf("Commands:", StringComparison.Ordinal)..])
                .Select(found => found.Groups[1].Value),
        ];

    [GeneratedRegex("^  ([a-z-]+) ", RegexOptions.Multiline)]
    private static partial Regex CommandNames();
}
