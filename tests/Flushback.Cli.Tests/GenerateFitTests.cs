using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests;

/// <summary>Pages changed for a pull, and pages with two blades, through the command.</summary>
public sealed class GenerateFitTests : IDisposable
{
    private readonly Workbench _bench = new();

    [Fact]
    public async Task A_page_is_changed_for_a_pull_and_the_changed_page_pulls_so()
    {
        string page = Put("name: Heron\nspring:\n  width: 4 mm\n");

        Ending fitted = await Client.RunAsync(
            "generate",
            "--pattern",
            page,
            "--pull",
            "2.5lbf",
            "--most-stress",
            "950",
            "--out",
            _bench.PathOf("heron")
        );
        Ending again = await Client.RunAsync("generate", "--pattern", _bench.PathOf("heron/pattern.yaml"), "--handle");

        Assert.Equal("", fitted.Error);
        Assert.Contains("Changed on the page", fitted.Output, StringComparison.Ordinal);
        Assert.Contains(
            "the blade takes 11.1 N (2.5 lbf) at the nail nick",
            Joined(fitted.Output),
            StringComparison.Ordinal
        );
        Assert.Contains("11.1 N (2.5 lbf) at the nail nick", Joined(again.Output), StringComparison.Ordinal);
        Assert.Contains("  width: 4 mm", File.ReadAllLines(_bench.PathOf("heron/pattern.yaml")));
        Assert.Equal("name: Heron\nspring:\n  width: 4 mm\n", File.ReadAllText(page));
    }

    [Fact]
    public async Task A_pull_that_cannot_be_had_ends_with_code_1_and_says_what_stops_it()
    {
        Ending ending = await Client.RunAsync(
            "generate",
            "--pattern",
            Put("free: [spring.preload]\n"),
            "--pull",
            "300N",
            "--out",
            _bench.PathOf("out")
        );

        Assert.Equal((1, ""), (ending.ExitCode, ending.Error));
        Assert.Contains(
            "No change of preload within the limits gives 300.0 N",
            Joined(ending.Output),
            StringComparison.Ordinal
        );
        Assert.False(File.Exists(_bench.PathOf("out/pattern.yaml")));
    }

    [Fact]
    public async Task A_pull_that_is_no_force_is_refused()
    {
        Ending ending = await Client.RunAsync("generate", "--pattern", Put("name: Heron\n"), "--pull", "22kg");

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains(
            "--pull: '22kg' is not a force: write newtons or pounds-force, such as 22, 22N or 5lbf.",
            ending.Error,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Two_blades_are_drawn_and_each_is_read_from_its_layers()
    {
        string page = Put("arrangement: two springs\nsecond-blade:\n  blade:\n    family: pen\n    length: 48 mm\n");

        Ending drawn = await Client.RunAsync("generate", "--pattern", page, "--out", _bench.PathOf("two"));
        Ending second = await Client.RunAsync(
            "check",
            _bench.PathOf("two/pattern.dxf"),
            "--blade-layer",
            "BLADE_2",
            "--spring-layer",
            "SPRING_2",
            "--pins-layer",
            "PINS_2"
        );

        Assert.Equal((0, ""), (drawn.ExitCode, drawn.Error));
        Assert.Contains("Blade past blade", drawn.Output, StringComparison.Ordinal);
        Assert.Equal(("", 0), (second.Error, second.ExitCode));
        Assert.Contains("closed     +15.0  +0.381", second.Output, StringComparison.Ordinal);
    }

    public void Dispose() => _bench.Dispose();

    private static string Joined(string text) =>
        string.Join(' ', text.Split((char[])[' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    private string Put(string page)
    {
        string path = _bench.PathOf("page.yaml");
        File.WriteAllText(path, page);
        return path;
    }
}
