using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests;

public sealed class ToleranceTests : IDisposable
{
    private readonly Workbench _bench = new();

    [Fact]
    public async Task The_files_are_written_the_table_is_printed_and_no_bar_goes_into_a_pipe()
    {
        string folder = _bench.PathOf("spread");
        Ending ending = await RunAsync("--pins", "0.02mm", "--profile", "1thou", "--parts", "200", "--out", folder);

        Assert.Equal("", ending.Error);
        Assert.Equal(0, ending.ExitCode);
        Assert.Equal(
            ["report.json", "spread.csv", "tolerance.html", "tolerance.txt"],
            Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        Assert.Equal(await File.ReadAllTextAsync(Path.Combine(folder, "tolerance.txt")), ending.Output);
        Assert.Contains("percent of 200 parts", ending.Output, StringComparison.Ordinal);
        Assert.Contains("What to tighten first", ending.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_option_reaches_the_study()
    {
        Wire.StudyReport report = await JsonAsync(
            "--pins",
            "0.02mm",
            "--clearance",
            "1thou",
            "--profile",
            "0.03mm",
            "--face-profile",
            "kick=0.01mm",
            "--face-profile",
            "end-face=0mm",
            "--depth-off",
            "0.04mm",
            "--width-off",
            "0.05mm",
            "--preload-off",
            "0.06mm",
            "--distribution",
            "normal",
            "--parts",
            "40",
            "--seed",
            "7"
        );

        Assert.Equal(Wire.SpreadKind.Normal, report.Spread);
        Assert.Equal(7ul, report.Seed);
        Assert.Equal(40, report.Counts.Parts);
        Dictionary<Wire.ToleranceOf, double> limits = report
            .Tolerances.Where(effect => effect.Face is null)
            .ToDictionary(effect => effect.Of, effect => effect.LimitMm);
        Assert.Equal(0.02, limits[Wire.ToleranceOf.PivotHole]);
        Assert.Equal(0.02, limits[Wire.ToleranceOf.RearPinPlace]);
        Assert.Equal(0.0254, limits[Wire.ToleranceOf.PivotPlay], 1e-12);
        Assert.Equal(0.04, limits[Wire.ToleranceOf.SpringDepth]);
        Assert.Equal(0.05, limits[Wire.ToleranceOf.SpringWidth]);
        Assert.Equal(0.06, limits[Wire.ToleranceOf.Preload]);
        Assert.Equal(0.01, report.Tolerances.Single(effect => effect.Face?.BladeFace == Wire.BladeFace.Kick).LimitMm);
        Assert.DoesNotContain(report.Tolerances, effect => effect.Face?.SpringFace == Wire.SpringFace.EndFace);
    }

    [Fact]
    public async Task The_same_seed_prints_the_same_and_another_does_not()
    {
        string[] options = ["--profile", "0.03mm", "--parts", "60"];
        string first = (await RunAsync(options)).Output;

        Assert.Equal(first, (await RunAsync([.. options, "--seed", "1"])).Output);
        Assert.NotEqual(first, (await RunAsync([.. options, "--seed", "2"])).Output);
    }

    [Theory]
    [InlineData("0%", 0)]
    [InlineData("100%", 1)]
    public async Task It_ends_with_1_when_fewer_parts_than_wanted_read_within_their_targets(string want, int code)
    {
        Ending ending = await RunAsync("--profile", "0.05mm", "--parts", "60", "--quiet", "--want", want);

        Assert.Equal(code, ending.ExitCode);
        Assert.Equal("", ending.Output + ending.Error);
    }

    [Theory]
    [InlineData("No tolerance is given")]
    [InlineData("'95' is not a share", "--pins", "0.02mm", "--want", "95")]
    [InlineData("'0.02' is not a length", "--pins", "0.02")]
    [InlineData("'kick' is no profile of a face", "--face-profile", "kick")]
    [InlineData("names no face whose profile varies", "--face-profile", "edge=0.1mm")]
    [InlineData("(option --pins)", "--pins", "20mm")]
    [InlineData("(option --parts)", "--pins", "0.02mm", "--parts", "0")]
    [InlineData("more than the 20,000 allowed", "--pins", "0.02mm", "--parts", "20001")]
    public async Task What_cannot_be_studied_is_refused_in_a_sentence(string said, params string[] options)
    {
        Ending ending = await RunAsync(options);

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains(said, Assert.Single(ending.Complaints), StringComparison.Ordinal);
        Assert.Equal("", ending.Output);
    }

    [Fact]
    public async Task Help_has_examples_and_every_option_of_its_own()
    {
        Ending ending = await Client.RunAsync("tolerance", "--help");

        Assert.Equal(0, ending.ExitCode);
        Assert.Contains("Examples:", ending.Output, StringComparison.Ordinal);
        string[] options =
        [
            "--pins",
            "--clearance",
            "--profile",
            "--face-profile",
            "--depth-off",
            "--width-off",
            "--preload-off",
            "--distribution",
            "--parts",
            "--seed",
            "--want",
            "--out",
            "--handle",
            "--tolerance",
            "--json",
            "--quiet",
        ];
        Assert.All(options, option => Assert.Contains($"  {option} ", ending.Output, StringComparison.Ordinal));
    }

    /// <inheritdoc/>
    public void Dispose() => _bench.Dispose();

    private Task<Ending> RunAsync(params string[] options) =>
        Client.RunAsync(["tolerance", _bench.PutClean(), .. options]);

    private async Task<Wire.StudyReport> JsonAsync(params string[] options)
    {
        Ending ending = await RunAsync([.. options, "--json"]);
        Assert.Equal("", ending.Error);
        return Wire.StudyReport.Parser.ParseJson(ending.Output);
    }
}
