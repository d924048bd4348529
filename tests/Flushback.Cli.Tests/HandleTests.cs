using Flushback.Cli.Tests.Running;
using Flushback.Contract.V1;
using Flushback.Service;
using Microsoft.AspNetCore.Builder;

namespace Flushback.Cli.Tests;

/// <summary>The handle through the client: a process of its own, the service inside it or on a socket.</summary>
public sealed class HandleTests : IDisposable
{
    private readonly Workbench _bench = new();

    [Fact]
    public async Task The_handle_is_reported_when_it_is_asked_for_and_only_then()
    {
        string drawing = _bench.PutClean();

        Ending without = await Client.RunAsync("check", drawing);
        Ending with = await Client.RunAsync("check", drawing, "--handle", "--width", "3.2mm");

        Assert.Equal((0, ""), (with.ExitCode, with.Error));
        Assert.DoesNotContain("In the handle", without.Output, StringComparison.Ordinal);
        Assert.Contains("\nIn the handle\n", with.Output, StringComparison.Ordinal);
        Assert.Contains("Pull to open", with.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Each_option_reaches_the_report()
    {
        HandleReport handle = await ReportAsync(
            "--width",
            "0.125in",
            "--preload",
            "20thou",
            "--spring-steel",
            "aisi 440c",
            "--spring-hardness",
            "40",
            "--friction",
            "0",
            "--nick",
            "33mm",
            "--stiff-nose",
            "6mm"
        );

        Assert.Equal(3.175, handle.Spring.WidthMm, 1e-9);
        Assert.Equal(0.508, handle.Spring.PreloadMm, 1e-9);
        Assert.Equal("440C", handle.Spring.Steel);
        Assert.Equal(0, handle.Spring.Friction);
        Assert.Equal(handle.Pull.WithoutFrictionN, handle.Pull.PullN, 1e-9);
        Assert.Equal(33, handle.Pull.NailNickMm);
        Assert.Equal(6, handle.Spring.StiffNoseMm, 1e-9);
        // Published estimates for 40 HRC; see the tests of the conversion.
        Assert.InRange(handle.Strength.TensileLowMpa, 1200, 1262);
    }

    [Fact]
    public async Task The_preload_can_be_given_by_the_rear_pin()
    {
        HandleReport handle = await ReportAsync("--rear-pin-shift", "0.4mm");

        // The centre pin lies 42 mm behind the pivot and 40 mm in front of the rear pin.
        Assert.Equal(0.4 * 42 / 40, handle.Spring.PreloadMm, 1e-6);
    }

    [Fact]
    public async Task A_spring_drawn_free_has_the_preload_it_is_drawn_with()
    {
        HandleReport handle = await ReportAsync("--drawn-free");

        // The catalogue's spring is drawn where it lies open.
        Assert.Equal(0, handle.Spring.PreloadMm, 1e-6);
    }

    [Fact]
    public async Task A_steel_of_the_makers_own_has_his_name_modulus_and_strength()
    {
        HandleReport handle = await ReportAsync(
            "--spring-steel",
            "Forge's own",
            "--spring-modulus",
            "193000",
            "--spring-strength",
            "1500"
        );

        Assert.Equal("Forge's own", handle.Spring.Steel);
        Assert.Equal(193_000, handle.Spring.ModulusMpa);
        Assert.Equal((1500, 1500), (handle.Strength.TensileLowMpa, handle.Strength.TensileHighMpa));
    }

    [Fact]
    public async Task A_wanted_pull_is_answered_and_held_under_the_stress_given()
    {
        string drawing = _bench.PutClean();

        Ending found = await Client.RunAsync("check", drawing, "--json", "--width", "3.2mm", "--pull", "12");
        Ending none = await Client.RunAsync(
            "check",
            drawing,
            "--json",
            "--width",
            "3.2mm",
            "--pull",
            "12",
            "--most-stress",
            "500"
        );

        var suggestion = CheckReport.Parser.ParseJson(found.Output).Handle.Suggestion;
        Assert.Equal(12, suggestion.PullN, 0.01);
        Assert.Contains(
            "500 MPa",
            CheckReport.Parser.ParseJson(none.Output).Handle.Suggestion.Sentence,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_light_pull_is_a_finding_and_so_is_an_unusual_pair_of_hardnesses()
    {
        string drawing = _bench.PutClean();

        Ending light = await Client.RunAsync("check", drawing, "--handle", "--width", "2mm");
        Ending pair = await Client.RunAsync("check", drawing, "--width", "3.2mm", "--blade-hardness", "45");

        Assert.Equal((1, 1), (light.ExitCode, pair.ExitCode));
        Assert.Contains("at the nail nick to open", light.Output, StringComparison.Ordinal);
        Assert.Contains(
            "parts of like hardness gall",
            string.Join(' ', pair.Output.Split('\n')),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task The_curve_in_the_handle_is_written_beside_the_lift_curve()
    {
        string drawing = _bench.PutClean();

        Ending ending = await Client.RunAsync("check", drawing, "--width", "3.2mm", "--out", _bench.PathOf("report"));

        Assert.Equal(0, ending.ExitCode);
        Assert.Contains("report/lift-curve.csv", _bench.Contents);
        string[] lines = await File.ReadAllLinesAsync(_bench.PathOf("report/handle-curve.csv"));
        Assert.StartsWith(
            "blade_angle_deg,bench_lift_mm,bench_lift_thou,handle_lift_mm",
            lines[0],
            StringComparison.Ordinal
        );
        Assert.InRange(lines.Length, 350, 370);
    }

    [Fact]
    public async Task A_running_service_reports_the_same_handle_as_the_one_inside()
    {
        await using WebApplication host = FlushbackHost.Build([
            "--urls",
            "http://127.0.0.1:0",
            "--Logging:LogLevel:Default=None",
        ]);
        await host.StartAsync();
        string[] args = ["check", _bench.PutClean(), "--handle", "--width", "3.2mm"];

        Ending outside = await Client.RunAsync([.. args, "--server", host.Urls.Single()]);
        Ending inside = await Client.RunAsync(args);

        Assert.Equal((0, ""), (outside.ExitCode, outside.Error));
        Assert.Equal(inside.Output, outside.Output);
    }

    /// <summary>Options that no handle can hold, and words of the sentence.</summary>
    public static TheoryData<string[], string> BadOptions =>
        new()
        {
            { ["--width", "0mm"], "is not above zero" },
            { ["--spring-strength", "1500"], "give --spring-modulus too" },
            { ["--spring-modulus", "20"], "(option --spring-modulus)" },
            { ["--width", "-3mm"], "is not above zero" },
            { ["--width", "thick"], "is not a length" },
            { ["--preload", "-0.1mm"], "(option --preload)" },
            { ["--preload", "12mm"], "can not be turned" },
            { ["--preload", "0.4mm", "--rear-pin-shift", "0.4mm"], "more than one way" },
            { ["--spring-steel", "unobtainium"], "1095" },
            { ["--spring-hardness", "90"], "(option --spring-hardness)" },
            { ["--blade-hardness", "soft"], "is not a number" },
            { ["--friction", "2"], "(option --friction)" },
            { ["--nick", "0mm"], "(option --nick)" },
            { ["--stiff-nose", "50mm"], "centre pin" },
            { ["--pull", "0"], "(option --pull)" },
            { ["--most-stress", "-1"], "(option --most-stress)" },
        };

    [Theory]
    [MemberData(nameof(BadOptions))]
    public async Task What_no_handle_can_hold_exits_with_2_and_one_sentence(string[] options, string words)
    {
        Ending ending = await Client.RunAsync([
            "check",
            _bench.PutClean(),
            "--out",
            _bench.PathOf("report"),
            .. options,
        ]);

        Assert.Equal((2, ""), (ending.ExitCode, ending.Output));
        Assert.Contains(words, ending.Error, StringComparison.Ordinal);
        Assert.Equal(["wagtail.dxf"], _bench.Contents);
    }

    public void Dispose() => _bench.Dispose();

    private async Task<HandleReport> ReportAsync(params string[] options)
    {
        Ending ending = await Client.RunAsync(["check", _bench.PutClean(), "--json", .. options]);
        Assert.Equal("", ending.Error);
        return CheckReport.Parser.ParseJson(ending.Output).Handle;
    }
}
