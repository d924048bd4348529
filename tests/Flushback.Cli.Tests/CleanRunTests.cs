using System.Text;
using Flushback.Cli.Tests.Running;
using Flushback.Contract.V1;

namespace Flushback.Cli.Tests;

public sealed class CleanRunTests : IDisposable
{
    private readonly Workbench _bench = new();

    [Fact]
    public async Task A_clean_pair_prints_its_readings_and_exits_with_0()
    {
        Ending ending = await Client.RunAsync("check", _bench.PutClean());

        Assert.Equal("", ending.Error);
        Assert.Equal(0, ending.ExitCode);
        Assert.Contains("half stop", ending.Output, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("+5.0", ending.Output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', ending.Output);
    }

    [Fact]
    public async Task Findings_above_a_note_exit_with_1()
    {
        Ending ending = await Client.RunAsync("check", _bench.PutFlawed());

        Assert.Equal(1, ending.ExitCode);
        Assert.Equal("", ending.Error);
    }

    [Fact]
    public async Task The_report_folder_holds_every_file_and_no_other()
    {
        string drawing = _bench.PutClean();

        Ending ending = await Client.RunAsync("check", drawing, "--out", _bench.PathOf("a/report"));

        Assert.Equal(0, ending.ExitCode);
        Assert.Equal(
            [
                "a",
                "a/report",
                "a/report/contacts.dxf",
                "a/report/lift-curve.csv",
                "a/report/report.html",
                "a/report/report.json",
                "a/report/report.txt",
                "wagtail.dxf",
            ],
            _bench.Contents
        );
        Assert.Equal(ending.Output, await File.ReadAllTextAsync(_bench.PathOf("a/report/report.txt")));
    }

    [Fact]
    public async Task The_json_is_the_contracts_own()
    {
        Ending ending = await Client.RunAsync("check", _bench.PutClean(), "--json", "--name", "Wagtail two");

        CheckReport report = CheckReport.Parser.ParseJson(ending.Output);

        Assert.Equal("Wagtail two", report.Name);
        Assert.Equal([Stop.Open, Stop.HalfStop, Stop.Closed], report.Stops.Select(stop => stop.Stop));
    }

    [Fact]
    public async Task Quiet_prints_nothing()
    {
        Ending ending = await Client.RunAsync("check", _bench.PutClean(), "--quiet");

        Assert.Equal((0, "", ""), (ending.ExitCode, ending.Output, ending.Error));
    }

    [Fact]
    public async Task Running_it_again_writes_the_same_bytes_over_the_old_report()
    {
        string drawing = _bench.PutClean();
        await Client.RunAsync("check", drawing, "--out", _bench.PathOf("report"));
        Dictionary<string, string> first = Files();

        await Client.RunAsync("check", drawing, "--out", _bench.PathOf("report"));

        Assert.Equal(first, Files());
    }

    [Fact]
    public async Task The_private_socket_is_gone_afterwards()
    {
        string temporary = _bench.PathOf("tmp");
        Directory.CreateDirectory(temporary);

        Ending ending = await Client.RunWithAsync(
            new() { ["TMPDIR"] = temporary },
            "check",
            _bench.PutClean(),
            "--quiet"
        );

        Assert.Equal(0, ending.ExitCode);
        Assert.Empty(Directory.EnumerateFileSystemEntries(temporary));
    }

    [Fact]
    public async Task Neither_environment_nor_folder_changes_the_service_inside()
    {
        Ending ending = await Client.RunWithAsync(
            new() { ["ASPNETCORE_URLS"] = "http://256.0.0.1:1", ["Limits__Vertices"] = "8" },
            "check",
            _bench.PutClean()
        );

        Assert.Equal((0, ""), (ending.ExitCode, ending.Error));
    }

    [Fact]
    public async Task Options_reach_the_report()
    {
        string drawing = _bench.PutClean();

        Ending ending = await Client.RunAsync(
            "check",
            drawing,
            "--json",
            "--finished",
            "--target",
            "closed=+0.4mm",
            "--tolerance",
            "2thou",
            "--step",
            "1",
            "--blade-angle",
            "0"
        );

        CheckReport report = CheckReport.Parser.ParseJson(ending.Output);
        Assert.Equal([0, 0, 0.4], report.Stops.Select(stop => stop.TargetMm));
        Assert.All(report.Stops, stop => Assert.Equal(0.0508, stop.ToleranceMm, 12));
        Assert.InRange(report.Curve.Samples.Count, 181, 200);
        Assert.False(report.Reading.DrawnBladeAngleFound);
    }

    public void Dispose() => _bench.Dispose();

    private Dictionary<string, string> Files() =>
        Directory
            .EnumerateFiles(_bench.PathOf("report"))
            .ToDictionary(path => path, path => Encoding.Latin1.GetString(File.ReadAllBytes(path)));
}
