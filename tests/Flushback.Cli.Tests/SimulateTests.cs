using System.Text;
using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests;

public sealed class SimulateTests : IDisposable
{
    private readonly Workbench _bench = new();

    [Fact]
    public async Task Passes_are_made_in_their_order_those_of_the_file_first()
    {
        string passes = Put(
            """
            # Words and units as on the command line.
            passes:
              - round: open-corner
                radius: 0.4mm
              - slice: closed-face
                front: 1thou
                rear: 0.05mm
            """
        );

        Wire.SimulateReport report = await JsonAsync("--pass", "dress kick depth=1thou", "--passes", passes);

        Assert.Equal(
            [Wire.Pass.KindOneofCase.RoundCorner, Wire.Pass.KindOneofCase.FlatSlice, Wire.Pass.KindOneofCase.DressKick],
            report.Steps.Select(step => step.Pass.KindCase)
        );
        Assert.Equal(0.0254, report.Steps[1].Pass.FlatSlice.FrontDepthMm, 1e-12);
        Assert.Equal(0.05, report.Steps[1].Pass.FlatSlice.RearDepthMm, 1e-12);
    }

    [Fact]
    public async Task Every_form_of_a_pass_that_the_help_shows_can_be_made()
    {
        string help = (await Client.RunAsync("simulate", "--help")).Output;
        string[] forms =
        [
            .. help.Split('\n')
                .SkipWhile(line => !line.Contains("leave it out", StringComparison.Ordinal))
                .Select(line => line.Trim())
                .Where(line => line.Contains('=', StringComparison.Ordinal))
                .Take(8),
        ];

        // Each alone: what one takes off another may want.
        Assert.Equal(8, forms.Length);
        Wire.SimulateReport[] reports =
        [
            .. await Task.WhenAll(forms.Chunk(2).SelectMany(pair => pair).Select(form => JsonAsync("--pass", form))),
        ];
        Assert.Equal(8, reports.Select(report => report.Steps[0].Pass.ToString()).Distinct().Count());
    }

    [Fact]
    public async Task The_files_are_written_and_the_table_is_printed()
    {
        string folder = _bench.PathOf("passes");
        Ending ending = await Client.RunAsync(
            "simulate",
            _bench.PutClean(),
            "--pass",
            "round open-corner radius=0.5mm",
            "--out",
            folder
        );

        Assert.Equal("", ending.Error);
        Assert.Equal(
            ["passes.dxf", "passes.html", "passes.txt", "report.json"],
            Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        Assert.Equal(await File.ReadAllTextAsync(Path.Combine(folder, "passes.txt")), ending.Output);
        Assert.Contains("1  round the open corner", ending.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("round", "is no pass")]
    [InlineData("polish open-corner", "is no pass")]
    [InlineData("dress open-corner depth=1mm", "is no pass")]
    [InlineData("round nowhere radius=1mm", "names no face or corner")]
    [InlineData("round open-corner", "says no radius")]
    [InlineData("round open-corner radius=1", "is not a length")]
    [InlineData("round open-corner radius=1mm depth=1mm", "takes no depth")]
    [InlineData("slice half-stop-face front=1thou", "says no rear")]
    [InlineData("dress end-face angle=steep", "is not a number")]
    [InlineData("shorten tip by=1mm allowed=perhaps", "write yes or no")]
    [InlineData("round open-corner 1mm", "is no amount")]
    public async Task A_pass_that_is_none_is_refused_in_a_sentence(string pass, string said)
    {
        Ending ending = await Client.RunAsync("simulate", _bench.PutClean(), "--pass", pass);

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains(said, Assert.Single(ending.Complaints), StringComparison.Ordinal);
        Assert.Equal("", ending.Output);
    }

    [Theory]
    [InlineData("passes: []", "line 1: holds no passes")]
    [InlineData("passes:\n  - radius: 1mm", "line 2: has a pass that says nothing to do")]
    [InlineData("passes:\n  - round: open-corner\n    slice: kick", "line 3: says two things to do")]
    [InlineData("passes:\n  - round: open-corner\n    radius: 1", "is not a length")]
    [InlineData("passes:\n  - round open-corner", "line 2: has something that is no pass")]
    [InlineData("passes: [", "cannot be read as YAML")]
    public async Task A_file_that_holds_no_passes_is_refused_with_its_line(string text, string said)
    {
        Ending ending = await Client.RunAsync("simulate", _bench.PutClean(), "--passes", Put(text));

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains(said, Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pass_that_cannot_be_made_names_the_option_and_writes_nothing()
    {
        string folder = _bench.PathOf("passes");
        Ending ending = await Client.RunAsync(
            "simulate",
            _bench.PutClean(),
            "--pass",
            "round kick radius=0.1mm",
            "--out",
            folder
        );

        Assert.Equal(2, ending.ExitCode);
        string complaint = Assert.Single(ending.Complaints);
        Assert.StartsWith("Pass 1: The kick", complaint, StringComparison.Ordinal);
        Assert.EndsWith("(option --pass)", complaint, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    [Fact]
    public async Task Without_a_pass_nothing_is_simulated()
    {
        Ending ending = await Client.RunAsync("simulate", _bench.PutClean());

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains("No pass is given", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    /// <inheritdoc/>
    public void Dispose() => _bench.Dispose();

    private string Put(string yaml) => _bench.Put("passes.yaml", Encoding.UTF8.GetBytes(yaml));

    private async Task<Wire.SimulateReport> JsonAsync(params string[] options)
    {
        Ending ending = await Client.RunAsync(["simulate", _bench.PutClean(), "--json", .. options]);
        Assert.Equal("", ending.Error);
        return Wire.SimulateReport.Parser.ParseJson(ending.Output);
    }
}
