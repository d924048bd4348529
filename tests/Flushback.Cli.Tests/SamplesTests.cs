using Flushback.Cli.Tests.Running;
using Flushback.Contract.V1;

namespace Flushback.Cli.Tests;

public sealed class SamplesTests
{
    [Theory]
    [InlineData("wagtail-half-stop.dxf", 0)]
    [InlineData("dunlin-no-half-stop.dxf", 0)]
    [InlineData("lapwing-reads-badly.dxf", 1)]
    [InlineData("whimbrel-reads-high.dxf", 1)]
    public async Task Sample_drawings_end_as_their_names_promise(string sample, int exitCode)
    {
        Ending ending = await Client.RunAsync("check", Path.Combine(Samples(), sample));

        Assert.Equal("", ending.Error);
        Assert.Equal(exitCode, ending.ExitCode);
    }

    [Fact]
    public async Task The_sample_that_reads_high_is_brought_into_its_windows_by_its_passes()
    {
        Ending ending = await Client.RunAsync(
            "simulate",
            Path.Combine(Samples(), "whimbrel-reads-high.dxf"),
            "--passes",
            Path.Combine(Samples(), "whimbrel-passes.yaml")
        );

        Assert.Equal("", ending.Error);
        Assert.Equal(0, ending.ExitCode);
        Assert.Contains("In order: every reading lies in its window", ending.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_plan_that_the_readme_shows_is_the_one_that_is_printed()
    {
        Ending ending = await Client.RunAsync(
            "plan",
            Path.Combine(Samples(), "whimbrel-reads-high.dxf"),
            "--relief",
            "3thou"
        );

        string[] readme = await File.ReadAllLinesAsync(Path.Combine(Samples(), "..", "..", "README.md"));
        string[] shown =
        [
            .. readme
                .SkipWhile(line => line != "## Plan the passes")
                .SkipWhile(line => !line.StartsWith("      1  ", StringComparison.Ordinal))
                .TakeWhile(line => line.Length == 0 || line.StartsWith("      ", StringComparison.Ordinal))
                .Where(line => line.Length > 0)
                .Select(line => line[4..]),
        ];
        string[] printed = ending.Output.Split('\n');
        Assert.Equal((0, ""), (ending.ExitCode, ending.Error));
        Assert.Equal(9, shown.Length);
        Assert.All(shown, line => Assert.Contains(line, printed));
    }

    /// <remarks>In millimetres and inches, mirrored, drawn closed, upside down; one that cannot be reached among them.</remarks>
    [Theory]
    [InlineData("whimbrel-reads-high.dxf", true)]
    [InlineData("godwit-inch-closed-mirrored.dxf", true, "--finished")]
    [InlineData("sandpiper-relieved.dxf", true, "--finished")]
    [InlineData("lapwing-reads-badly.dxf", false)]
    public async Task A_corrected_sample_reads_as_its_plan_says(string sample, bool isReached, params string[] options)
    {
        using Workbench bench = new();
        string folder = bench.PathOf("plan");
        Ending planned = await Client.RunAsync([
            "plan",
            Path.Combine(Samples(), sample),
            "--out",
            folder,
            "--quiet",
            .. options,
        ]);
        Ending read = await Client.RunAsync(
            "check",
            Path.Combine(folder, "corrected.dxf"),
            "--blade-layer",
            "FLUSHBACK_BLADE",
            "--spring-layer",
            "FLUSHBACK_SPRING",
            "--json"
        );

        Assert.Equal((isReached ? 0 : 1, ""), (planned.ExitCode, planned.Error));
        PlanReport plan = PlanReport.Parser.ParseJson(await File.ReadAllTextAsync(Path.Combine(folder, "plan.json")));
        CheckReport check = CheckReport.Parser.ParseJson(read.Output);
        foreach ((StopReading expected, StopReading found) in plan.Steps[^1].Stops.Zip(check.Stops))
        {
            Assert.Equal(expected.LiftMm, found.LiftMm, 1e-6);
            Assert.Equal(expected.RestAngleDeg, found.RestAngleDeg, 1e-4);
        }
    }

    [Theory]
    [InlineData("wagtail-half-stop.dxf")]
    [InlineData("dunlin-no-half-stop.dxf")]
    [InlineData("sandpiper-relieved.dxf")]
    [InlineData("godwit-inch-closed-mirrored.dxf")]
    public async Task The_sound_samples_pull_as_pocket_knives_do_at_a_stress_their_steel_stands(string sample)
    {
        Ending ending = await Client.RunAsync(
            "check",
            Path.Combine(Samples(), sample),
            "--handle",
            "--width",
            "3.2mm",
            "--json"
        );

        HandleReport handle = CheckReport.Parser.ParseJson(ending.Output).Handle;
        Assert.Equal((0, ""), (ending.ExitCode, ending.Error));
        // Common practice, no source.
        Assert.InRange(handle.Pull.PullN, 10, 45);
        Assert.Contains(handle.Strength.Life, (SpringLife[])[SpringLife.Endless, SpringLife.Limited]);
    }

    [Theory]
    [InlineData("wagtail-half-stop.dxf")]
    [InlineData("dunlin-no-half-stop.dxf")]
    [InlineData("sandpiper-relieved.dxf")]
    [InlineData("godwit-inch-closed-mirrored.dxf")]
    [InlineData("lapwing-reads-badly.dxf")]
    [InlineData("whimbrel-reads-high.dxf")]
    public async Task Every_sample_can_be_planned_to_a_finished_pair(string sample)
    {
        Ending ending = await Client.RunAsync("plan", Path.Combine(Samples(), sample), "--finished");

        Assert.Equal((0, ""), (ending.ExitCode, ending.Error));
        Assert.Contains("Every stop comes to read as wanted", ending.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("heron-sound-sheet.dxf", 0)]
    [InlineData("snipe-bad-sheet.dxf", 1)]
    [InlineData("plover-no-unit.dxf", 2)]
    [InlineData("plover-no-unit.dxf", 1, "--guess-units")]
    [InlineData("plover-no-unit.dxf", 0, "--units", "in")]
    [InlineData("rail-stock-to-grind.dxf", 0, "--finished-layer", "FINISHED", "--stock", "0.1mm")]
    [InlineData("rail-stock-to-grind.dxf", 1, "--finished-layer", "FINISHED", "--stock", "0.2mm")]
    public async Task Sample_sheets_end_as_their_names_promise(string sample, int exitCode, params string[] options)
    {
        Ending ending = await Client.RunAsync(["inspect", Path.Combine(Samples(), "inspection", sample), .. options]);

        Assert.Equal(exitCode, ending.ExitCode);
    }

    [Fact]
    public async Task The_bad_sheet_shows_each_fault_it_was_drawn_with()
    {
        Ending ending = await Client.RunAsync(
            "inspect",
            Path.Combine(Samples(), "inspection", "snipe-bad-sheet.dxf"),
            "--json"
        );

        string[] codes =
        [
            .. Wire.InspectReport.Parser.ParseJson(ending.Output).Findings.Select(finding => finding.Code).Distinct(),
        ];
        string[] drawn =
        [
            "OPEN_CONTOUR",
            "GAP",
            "DUPLICATE",
            "NOT_FOR_CUTTING",
            "CURVE_LEFT",
            "MICRO_SEGMENT",
            "POLYGON_FOR_ARC",
            "THIN_WEB",
            "PIN_UNCLEAR",
        ];
        Assert.Equal(drawn.Order(StringComparer.Ordinal), codes.Order(StringComparer.Ordinal));
    }

    private static string Samples()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Flushback.slnx")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder!.FullName, "clients", "samples");
    }
}
