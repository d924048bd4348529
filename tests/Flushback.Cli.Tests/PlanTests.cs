using Flushback.Catalogue.Designs;
using Flushback.Cli.Tests.Running;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Cli.Tests;

public sealed class PlanTests : IDisposable
{
    private readonly Workbench _bench = new();

    [Fact]
    public async Task A_knife_that_reads_high_is_planned_and_the_table_has_a_row_a_pass()
    {
        Ending ending = await Client.RunAsync("plan", PutHigh());

        Assert.Equal((0, ""), (ending.ExitCode, ending.Error));
        Assert.Contains("Every stop comes to read as wanted: 5 passes", ending.Output, StringComparison.Ordinal);
        Assert.Contains("1  slice the closed face", ending.Output, StringComparison.Ordinal);
        Assert.Contains("+15.0   (+0.381)", ending.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Targets_out_of_reach_end_with_1_and_plain_sentences()
    {
        KnifeDesign low = KnifeCatalogue.Wagtail with { Tang = new TangDesign { ClosedReadingMm = -0.6 } };
        Ending ending = await Client.RunAsync("plan", _bench.Put("low.dxf", LooseDrawing.Of(low.ToDrawn())));

        Assert.Equal((1, ""), (ending.ExitCode, ending.Error));
        Assert.Contains("What stands in the way, and what would do it", ending.Output, StringComparison.Ordinal);
        Assert.Contains(
            "no pass on its face raises it.",
            ending.Output.ReplaceLineEndings(" "),
            StringComparison.Ordinal
        );
        Assert.Contains("- A new blade", ending.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_files_are_written_and_the_drawing_stays_as_it_is()
    {
        string drawing = PutHigh();
        byte[] before = await File.ReadAllBytesAsync(drawing);
        string folder = _bench.PathOf("plan");
        Ending ending = await Client.RunAsync("plan", drawing, "--out", folder);

        Assert.Equal((0, ""), (ending.ExitCode, ending.Error));
        Assert.Equal(
            ["card.html", "card.pdf", "corrected.dxf", "passes.yaml", "plan.html", "plan.json", "plan.txt"],
            Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal)
        );
        Assert.Equal(await File.ReadAllTextAsync(Path.Combine(folder, "plan.txt")), ending.Output);
        Assert.Equal(before, await File.ReadAllBytesAsync(drawing));
    }

    [Fact]
    public async Task Simulate_takes_the_passes_and_reads_the_same_after_each()
    {
        string drawing = PutHigh();
        string folder = _bench.PathOf("plan");
        await Client.RunAsync("plan", drawing, "--relief", "3thou,0.7mm", "--out", folder, "--quiet");
        Wire.PlanReport plan = Wire.PlanReport.Parser.ParseJson(
            await File.ReadAllTextAsync(Path.Combine(folder, "plan.json"))
        );
        Ending simulated = await Client.RunAsync(
            "simulate",
            drawing,
            "--passes",
            Path.Combine(folder, "passes.yaml"),
            "--json"
        );

        Assert.Equal("", simulated.Error);
        Assert.Equal(plan.Steps, Wire.SimulateReport.Parser.ParseJson(simulated.Output).Steps);
        Assert.Contains(plan.Steps, step => step.Pass.ReliefArc is not null);
    }

    [Fact]
    public async Task Check_of_the_corrected_drawing_on_our_layers_reads_as_planned()
    {
        string folder = _bench.PathOf("plan");
        await Client.RunAsync("plan", PutHigh(), "--out", folder, "--quiet");
        Wire.PlanReport plan = Wire.PlanReport.Parser.ParseJson(
            await File.ReadAllTextAsync(Path.Combine(folder, "plan.json"))
        );
        Ending ending = await Client.RunAsync(
            "check",
            Path.Combine(folder, "corrected.dxf"),
            "--blade-layer",
            plan.Layers.Blade,
            "--spring-layer",
            plan.Layers.Spring,
            "--json"
        );

        Wire.CheckReport read = Wire.CheckReport.Parser.ParseJson(ending.Output);
        Assert.Equal("", ending.Error);
        Assert.Equal(plan.Steps[^1].Stops[1].LiftMm, read.Stops[1].LiftMm, 1e-6);
        Assert.Equal(plan.Steps[^1].Stops[2].LiftMm, read.Stops[2].LiftMm, 1e-6);
    }

    [Fact]
    public async Task The_passes_alone_go_where_they_are_wanted()
    {
        string passes = _bench.PathOf("mine/passes.yaml");
        Ending ending = await Client.RunAsync("plan", PutHigh(), "--passes-out", passes, "--quiet");

        Assert.Equal((0, "", ""), (ending.ExitCode, ending.Error, ending.Output));
        Assert.StartsWith("# The passes of a plan", await File.ReadAllTextAsync(passes), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_option_reaches_the_plan()
    {
        Wire.PlanReport report = await JsonAsync(
            "--finished",
            "--target",
            "half-stop=0.1mm,closed=0.4mm",
            "--tolerance",
            "1thou",
            "--stock-kept",
            "2thou",
            "--rest-window",
            "0.4",
            "--least-radius",
            "0.3mm",
            "--relief",
            "3thou",
            "--open-flat",
            "0.1mm",
            "--tip-depth",
            "-5mm,20mm",
            "--pin-wall",
            "0.5mm"
        );

        Wire.StopReading closed = report.Steps[^1].Stops[2];
        Assert.Equal(0.4 + (2 * 0.0254), closed.TargetMm, 1e-12);
        Assert.Equal(0.0254, closed.ToleranceMm, 1e-12);
        Assert.InRange(Math.Abs(closed.RestAngleDeg - 180), 0, 0.4 + 1e-4);
        Assert.Contains(report.Steps, step => step.Pass.RoundCorner?.RadiusMm == 0.3);
        Assert.Contains(report.Steps, step => step.Pass.ReliefArc is { DepthMm: 3 * 0.0254, FrontMarginMm: 0.8 });
    }

    [Fact]
    public async Task What_was_measured_is_where_the_plan_starts()
    {
        Wire.PlanReport report = await JsonAsync("--measured", "half-stop=8thou,closed=23thou,open=0.02mm");

        Assert.Equal(8 * 0.0254, report.Start.Stops[1].LiftMm, 1e-5);
        Assert.Equal(23 * 0.0254, report.Start.Stops[2].LiftMm, 1e-5);
        Assert.Equal(3, report.Offsets.Count);
    }

    [Fact]
    public async Task Readings_that_nothing_explains_name_the_option_and_write_nothing()
    {
        string folder = _bench.PathOf("plan");
        Ending ending = await Client.RunAsync("plan", PutHigh(), "--measured", "closed=3mm", "--out", folder);

        Assert.Equal(2, ending.ExitCode);
        Assert.EndsWith("(option --measured)", Assert.Single(ending.Complaints), StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    [Theory]
    [InlineData("--measured", "half=9thou", "holds no readings")]
    [InlineData("--measured", "open=9thou", "holds no readings")]
    [InlineData("--measured", "closed=9", "holds no readings")]
    [InlineData("--measured", "closed=9thou,closed=8thou", "holds no readings")]
    [InlineData("--tip-depth", "3mm,1mm", "is not a least and a most")]
    [InlineData("--tip-depth", "3mm", "is not a least and a most")]
    [InlineData("--relief", "deep", "is no relief")]
    [InlineData("--relief", "3thou,0.8mm,1mm", "is no relief")]
    [InlineData("--stock-kept", "5", "is not a length")]
    [InlineData("--rest-window", "wide", "is not a number")]
    [InlineData("--rest-window", "0", "(option --rest-window)")]
    [InlineData("--stock-kept", "-1mm", "(option --stock-kept)")]
    [InlineData("--relief", "0mm", "(option --relief)")]
    public async Task An_option_that_says_nothing_is_refused_in_a_sentence(string option, string value, string said)
    {
        Ending ending = await Client.RunAsync("plan", PutHigh(), option, value);

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains(said, Assert.Single(ending.Complaints), StringComparison.Ordinal);
        Assert.Equal("", ending.Output);
    }

    /// <inheritdoc/>
    public void Dispose() => _bench.Dispose();

    private string PutHigh()
    {
        KnifeDesign high = KnifeCatalogue.Wagtail with
        {
            Tang = new TangDesign { HalfStopReadingMm = 0.25, ClosedReadingMm = 0.5 },
        };
        return _bench.Put("high.dxf", LooseDrawing.Of(high.ToDrawn()));
    }

    private async Task<Wire.PlanReport> JsonAsync(params string[] options)
    {
        Ending ending = await Client.RunAsync(["plan", PutHigh(), "--json", .. options]);
        Assert.Equal("", ending.Error);
        return Wire.PlanReport.Parser.ParseJson(ending.Output);
    }
}
