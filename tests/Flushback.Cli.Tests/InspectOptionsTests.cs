using Flushback.Cli.Tests.Running;
using Flushback.Geometry;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Cli.Tests;

public sealed class InspectOptionsTests : IDisposable
{
    private readonly Workbench _bench = new();

    private string Sound => _bench.Put("plate.dxf", SheetRequests.Sound());

    [Fact]
    public async Task Layers_tolerances_and_lengths_reach_the_inspection()
    {
        // A side of the plate is drawn 0.2 mm short, and another plate lies on a layer that is not named.
        LooseDrawing drawing = new LooseDrawing()
            .Add("PLATE", SheetRequests.Plate, leaveOut: 1)
            .Add("PLATE", new Edge(new Point(0, 0), new Point(59.8, 0)))
            .Add("OTHER", new Circle(new Point(100, 0), 5));
        string path = _bench.Put("short.dxf", drawing);

        Wire.InspectReport apart = await JsonAsync(path, "--cut-layer", "PLATE");
        Wire.InspectReport joined = await JsonAsync(
            path,
            "--cut-layer",
            "plate",
            "--cut-layer",
            "OTHER",
            "--join",
            "0.01in"
        );

        Assert.Equal(["PLATE"], apart.CutLayers);
        Assert.Equal(0.2, Assert.Single(apart.Findings, finding => finding.Code == "GAP").Value, 9);
        Assert.Equal(["PLATE", "OTHER"], joined.CutLayers);
        Assert.Empty(joined.OpenContours);
        Assert.Equal(2, joined.Parts.Count);
    }

    [Fact]
    public async Task A_web_a_cutter_and_short_or_tiny_pieces_are_held_against_the_lengths_given()
    {
        string[] none = [.. (await JsonAsync(Sound)).Findings.Select(finding => finding.Code)];
        Wire.InspectReport report = await JsonAsync(
            Sound,
            "--web",
            "350thou",
            "--micro",
            "21mm",
            "--tiny",
            "1/8in",
            "--cutter",
            "1mm"
        );

        Assert.Empty(none);
        Assert.Equal(350 * 0.0254, Assert.Single(report.Findings, finding => finding.Code == "THIN_WEB").Limit, 9);
        Assert.Equal(3.175, Assert.Single(report.Findings, finding => finding.Code == "TINY_FEATURE").Limit, 9);
        Assert.Equal(2, report.Findings.Count(finding => finding.Code == "MICRO_SEGMENT"));
    }

    [Fact]
    public async Task Pins_are_named_in_millimetres_and_in_fractions_of_an_inch()
    {
        // 3/32 in are 2.38125 mm, so a hole of 2.405 mm is too wide for it by more than an H7 fit.
        Wire.InspectReport metric = await JsonAsync(Sound, "--pin", "2.4mm", "--pin", "1.6mm");
        Wire.InspectReport inch = await JsonAsync(Sound, "--pin", "3/32in");

        Assert.True(Assert.Single(metric.Parts[0].Holes).Fit.Fits);
        Wire.PinFit fit = Assert.Single(inch.Parts[0].Holes).Fit;
        Assert.Equal(2.38125, fit.PinMm, 9);
        Assert.Equal(("3/32 in", false), (fit.PinName, fit.Fits));
    }

    [Fact]
    public async Task Reaming_wants_smaller_holes()
    {
        Assert.DoesNotContain(await Codes(Sound), code => code == "HOLE_FIT");
        Assert.Contains(await Codes(Sound, "--reamed"), code => code == "HOLE_FIT");
    }

    [Fact]
    public async Task Stock_is_measured_against_the_finished_layer()
    {
        LooseDrawing drawing = SheetRequests
            .Sound()
            .Add(
                "DONE",
                Outline.FromVertices([
                    new Vertex(0.2, 0.2, 0),
                    new Vertex(59.8, 0.2, 0),
                    new Vertex(59.8, 19.8, 0),
                    new Vertex(0.2, 19.8, 0),
                ])
            );
        string path = _bench.Put("stock.dxf", drawing);

        Wire.InspectReport enough = await JsonAsync(path, "--finished-layer", "DONE", "--stock", "0.15mm");
        Wire.InspectReport little = await JsonAsync(path, "--finished-layer", "DONE", "--stock", "10thou");

        Assert.Equal(0.2, enough.Parts[0].LeastStock.LeastMm, 9);
        Assert.DoesNotContain(enough.Findings, finding => finding.Code == "STOCK");
        Assert.Contains(little.Findings, finding => finding.Code == "STOCK");
    }

    [Theory]
    [InlineData("--units", "mm")]
    [InlineData("--unit", "mm")]
    [InlineData("--guess-units", null)]
    public async Task A_drawing_without_a_unit_is_read_when_the_unit_is_given_or_may_be_guessed(
        string option,
        string? value
    )
    {
        string path = _bench.Put("bare.dxf", SheetRequests.Sound(units: null));

        Ending refused = await Client.RunAsync("inspect", path);
        Wire.InspectReport report = await JsonAsync([path, option, .. value is null ? [] : new[] { value }]);

        Assert.Equal(2, refused.ExitCode);
        Assert.EndsWith("(option --units)", Assert.Single(refused.Complaints), StringComparison.Ordinal);
        Assert.Equal(Wire.LengthUnit.Millimetre, report.Unit);
        Assert.Equal(value is null, report.Findings.Any(finding => finding.Code == "UNIT_GUESSED"));
    }

    /// <summary>Options after the file, and words of the complaint.</summary>
    public static TheoryData<string[], string> BadOptions =>
        new()
        {
            { ["--units", "ft"], "mm, cm, m, in or thou" },
            { ["--cut-layer", "Blech"], "has no layer 'Blech'" },
            { ["--join", "0,01mm"], "is not a length" },
            { ["--join", "5mm"], "(option --join)" },
            { ["--micro", "-1mm"], "(option --micro)" },
            { ["--tiny", "1m"], "is not a length" },
            { ["--cutter", "0"], "(option --cutter)" },
            { ["--web", "-1thou"], "(option --web)" },
            { ["--pin", "2.4"], "is not a length" },
            { ["--pin", "3/0in"], "is not a length" },
            { ["--pin", "1/2/3in"], "is not a length" },
            { ["--pin", "0"], "(option --pin)" },
            { ["--kerf", "30mm"], "(option --kerf)" },
            { ["--stock", "-1mm"], "(option --stock)" },
            { ["--finished-layer", "Fertig"], "(option --finished-layer)" },
            { ["--cut-layer", "PLATE", "--finished-layer", "plate"], "both as cut and as finished" },
            { ["--server", "localhost"], "http://host:port" },
            { ["--no-such-option"], "--no-such-option" },
        };

    [Theory]
    [MemberData(nameof(BadOptions))]
    public async Task Bad_options_exit_with_2_and_a_sentence_and_write_nothing(string[] options, string words)
    {
        Ending ending = await Client.RunAsync(["inspect", Sound, "--out", _bench.PathOf("report"), .. options]);

        Assert.Equal((2, ""), (ending.ExitCode, ending.Output));
        Assert.Contains(words, ending.Error, StringComparison.Ordinal);
        Assert.Equal(["plate.dxf"], _bench.Contents);
    }

    public void Dispose() => _bench.Dispose();

    private static async Task<Wire.InspectReport> JsonAsync(params string[] args)
    {
        Ending ending = await Client.RunAsync(["inspect", .. args, "--json"]);
        Assert.Equal("", ending.Error);
        return Wire.InspectReport.Parser.ParseJson(ending.Output);
    }

    private static async Task<string[]> Codes(params string[] args) =>
        [.. (await JsonAsync(args)).Findings.Select(finding => finding.Code)];
}
