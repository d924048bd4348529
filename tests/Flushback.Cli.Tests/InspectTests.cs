using Flushback.Cli.Tests.Running;
using Flushback.Service;
using Flushback.Service.Tests.Inputs;
using Microsoft.AspNetCore.Builder;

namespace Flushback.Cli.Tests;

public sealed class InspectTests : IDisposable
{
    private readonly Workbench _bench = new();

    private string Sound => _bench.Put("plate.dxf", SheetRequests.Sound());
    private string Flawed => _bench.Put("flawed.dxf", SheetRequests.Flawed());

    [Fact]
    public async Task A_sound_plate_prints_its_parts_in_both_units_and_exits_with_0()
    {
        Ending ending = await Client.RunAsync("inspect", Sound);

        Assert.Equal((0, ""), (ending.ExitCode, ending.Error));
        Assert.StartsWith("plate\n====", ending.Output, StringComparison.Ordinal);
        Assert.Contains("60.00 x 20.00 mm (2.362 x 0.787 in)", ending.Output, StringComparison.Ordinal);
        Assert.Contains("2.4 mm", ending.Output, StringComparison.Ordinal);
        Assert.All(ending.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
    }

    [Fact]
    public async Task Findings_above_a_note_exit_with_1()
    {
        Ending ending = await Client.RunAsync("inspect", Flawed);

        Assert.Equal((1, ""), (ending.ExitCode, ending.Error));
        Assert.Contains("1. FAULT: ", ending.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_folder_holds_every_file_and_the_cut_path_only_with_a_kerf()
    {
        Ending without = await Client.RunAsync("inspect", Sound, "--out", _bench.PathOf("a"));
        Ending with = await Client.RunAsync("inspect", Sound, "--out", _bench.PathOf("b"), "--kerf", "0.2mm");

        Assert.Equal((0, 0), (without.ExitCode, with.ExitCode));
        Assert.Equal(
            [
                "a",
                "a/report.html",
                "a/report.json",
                "a/report.txt",
                "b",
                "b/cut-path.dxf",
                "b/report.html",
                "b/report.json",
                "b/report.txt",
                "plate.dxf",
            ],
            _bench.Contents
        );
        Assert.Equal(with.Output, await File.ReadAllTextAsync(_bench.PathOf("b/report.txt")));
    }

    [Fact]
    public async Task The_json_is_the_contracts_own()
    {
        Ending ending = await Client.RunAsync("inspect", Sound, "--json", "--name", "Plate two");

        Wire.InspectReport report = Wire.InspectReport.Parser.ParseJson(ending.Output);

        Assert.Equal("Plate two", report.Name);
        Assert.Single(report.Parts);
    }

    [Fact]
    public async Task Quiet_prints_nothing()
    {
        Ending ending = await Client.RunAsync("inspect", Flawed, "--quiet");

        Assert.Equal((1, "", ""), (ending.ExitCode, ending.Output, ending.Error));
    }

    [Fact]
    public async Task What_is_no_drawing_exits_with_2()
    {
        Ending letter = await Client.RunAsync("inspect", _bench.Put("letter.dxf", "Dear shop,\n"u8.ToArray()));
        Ending nothing = await Client.RunAsync("inspect", _bench.PathOf("nothing.dxf"));

        Assert.Equal((2, 2), (letter.ExitCode, nothing.ExitCode));
        Assert.StartsWith("There is no file", Assert.Single(nothing.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_service_that_does_not_answer_exits_with_3()
    {
        Ending ending = await Client.RunAsync("inspect", Sound, "--server", "http://127.0.0.1:1");

        Assert.Equal(3, ending.ExitCode);
        Assert.Contains("cannot be reached", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_running_service_gives_the_same_report_as_the_one_inside()
    {
        await using WebApplication host = FlushbackHost.Build([
            "--urls",
            "http://127.0.0.1:0",
            "--Logging:LogLevel:Default=None",
        ]);
        await host.StartAsync();

        Ending outside = await Client.RunAsync("inspect", Flawed, "--json", "--server", host.Urls.Single());
        Ending inside = await Client.RunAsync("inspect", Flawed, "--json");

        Assert.Equal((1, inside.Output), (outside.ExitCode, outside.Output));
    }

    [Fact]
    public async Task No_language_of_the_machine_changes_the_report()
    {
        string path = Flawed;

        Ending german = await Client.RunWithAsync(
            new() { ["LC_ALL"] = "de_DE.UTF-8", ["LANG"] = "de_DE.UTF-8" },
            "inspect",
            path,
            "--web",
            "0.5mm"
        );
        Ending plain = await Client.RunAsync("inspect", path, "--web", "0.5mm");

        Assert.Equal(plain, german);
    }

    public void Dispose() => _bench.Dispose();
}
