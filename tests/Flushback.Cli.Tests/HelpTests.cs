using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests;

public sealed class HelpTests
{
    [Fact]
    public async Task Help_has_examples_and_every_option()
    {
        Ending ending = await Client.RunAsync("check", "--help");

        Assert.Equal(0, ending.ExitCode);
        Assert.Contains("Examples:", ending.Output, StringComparison.Ordinal);
        string[] options =
        [
            "--out",
            "--server",
            "--name",
            "--unit",
            "--blade-angle",
            "--blade-layer",
            "--spring-layer",
            "--handle-layer",
            "--pins-layer",
            "--finished",
            "--target",
            "--tolerance",
            "--step",
            "--half-stop",
            "--dial",
            "--axis",
            "--face",
            "--handle",
            "--width",
            "--preload",
            "--rear-pin-shift",
            "--drawn-free",
            "--spring-steel",
            "--spring-modulus",
            "--spring-strength",
            "--spring-hardness",
            "--blade-hardness",
            "--friction",
            "--nick",
            "--stiff-nose",
            "--pull",
            "--most-stress",
            "--json",
            "--quiet",
        ];
        Assert.All(options, option => Assert.Contains($"  {option} ", ending.Output, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Help_of_simulate_has_examples_and_the_options_of_its_own()
    {
        Ending ending = await Client.RunAsync("simulate", "--help");

        Assert.Equal(0, ending.ExitCode);
        Assert.Contains("Examples:", ending.Output, StringComparison.Ordinal);
        string[] options = ["--pass", "--passes", "--pin-wall", "--out", "--server", "--finished", "--json", "--quiet"];
        Assert.All(options, option => Assert.Contains($"  {option} ", ending.Output, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Help_of_plan_has_examples_and_the_options_of_its_own()
    {
        Ending ending = await Client.RunAsync("plan", "--help");

        Assert.Equal(0, ending.ExitCode);
        Assert.Contains("Examples:", ending.Output, StringComparison.Ordinal);
        string[] options =
        [
            "--measured",
            "--stock-kept",
            "--rest-window",
            "--tip-depth",
            "--least-radius",
            "--relief",
            "--open-flat",
            "--pin-wall",
            "--passes-out",
            "--out",
            "--target",
            "--server",
        ];
        Assert.All(options, option => Assert.Contains($"  {option} ", ending.Output, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Help_of_inspect_has_examples_and_every_option()
    {
        Ending ending = await Client.RunAsync("inspect", "--help");

        Assert.Equal(0, ending.ExitCode);
        Assert.Contains("Examples:", ending.Output, StringComparison.Ordinal);
        string[] options =
        [
            "--out <",
            "--fix <",
            "--server <",
            "--name <",
            "--units <",
            "--guess-units",
            "--cut-layer <",
            "--join <",
            "--micro <",
            "--tiny <",
            "--cutter <",
            "--web <",
            "--pin <",
            "--reamed",
            "--kerf <",
            "--stock <",
            "--finished-layer <",
            "--json",
            "--quiet",
            "--verbose",
        ];
        Assert.All(options, option => Assert.Contains($" {option}", ending.Output, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Without_a_command_it_says_what_there_is_and_exits_with_2()
    {
        Ending ending = await Client.RunAsync();

        Assert.Equal(2, ending.ExitCode);
        Assert.NotEqual("", ending.Error);
    }
}
