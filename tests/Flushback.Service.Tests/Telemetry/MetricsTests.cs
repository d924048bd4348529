using System.Net;
using Flushback.Service.Queueing;
using Flushback.Service.Tests.BadInput;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Flushback.Service.Tests.Streaming;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;

namespace Flushback.Service.Tests.Telemetry;

/// <summary>What a reader of the metrics sees, as text from their own address.</summary>
public sealed class MetricsTests : IAsyncLifetime
{
    private RunningService _service = null!;

    public async Task InitializeAsync() =>
        _service = await RunningService.StartAsync("--Telemetry:MetricsUrl=http://127.0.0.1:0", "--Limits:Vertices=60");

    public Task DisposeAsync() => _service.DisposeAsync();

    [Fact]
    public async Task Requests_are_counted_and_timed_by_method_and_status()
    {
        await _service.Checker.CheckAsync(Requests.Outlines());
        await Refused.CheckAsync(_service.Checker, new Wire.CheckRequest());

        await AssertTellsAsync("flushback_request_duration_seconds_count", "ProfileChecker/Check", "OK", "1");
        await AssertTellsAsync(
            "flushback_request_duration_seconds_count",
            "ProfileChecker/Check",
            "InvalidArgument",
            "1"
        );
    }

    [Fact]
    public async Task Findings_are_counted_by_code()
    {
        Wire.CheckResponse response = await _service.Checker.CheckAsync(
            Requests.Outlines(Catalogue.Designs.KnifeCatalogue.Curlew.ToDrawn())
        );
        Wire.Finding first = response.Report.Findings[0];

        await AssertTellsAsync(
            "flushback_findings_total",
            $"code=\"{first.Code}\"",
            $" {response.Report.Findings.Count(finding => finding.Code == first.Code)}"
        );
    }

    [Fact]
    public async Task Findings_of_a_second_blade_are_counted_too_of_a_call_and_of_an_item()
    {
        Wire.GenerateRequest call = new()
        {
            Arrangement = Wire.Arrangement.TwoSprings,
            SecondBlade = new() { Blade = new() { LengthMm = 44 } },
            Bench = new() { TargetSet = Wire.TargetSet.Finished },
        };
        Wire.PatternCheckRequest item = new()
        {
            Arrangement = call.Arrangement,
            SecondBlade = call.SecondBlade,
            Bench = call.Bench,
        };

        Wire.GenerateResponse response = await _service.Exporter.GenerateAsync(call);
        await Library.CheckAsync(_service.Checker, [new Wire.CheckManyRequest { Pattern = item }]);

        int[] high =
        [
            .. new[] { response.Report, response.Second.Report }.Select(report =>
                report.Findings.Count(finding => finding.Code == "READING_HIGH")
            ),
        ];
        Assert.Equal([2, 2], high);
        await AssertTellsAsync("flushback_findings_total", "code=\"READING_HIGH\"", $" {2 * high.Sum()}");
    }

    [Fact]
    public async Task Refusals_over_a_limit_are_counted_by_limit()
    {
        Wire.CheckRequest tooMany = Requests.Outlines();
        tooMany.Knife.Outlines.Blade.Vertices.AddRange(
            Enumerable.Range(0, 61).Select(i => new Wire.Vertex { XMm = i, YMm = i * i })
        );
        await Refused.CheckAsync(_service.Checker, tooMany);
        await Refused.CheckAsync(_service.Checker, Requests.Drawing(new byte[5 * 1024 * 1024]));

        await AssertTellsAsync("flushback_requests_over_limit_total", "limit=\"Vertices\"", " 1");
        await AssertTellsAsync("flushback_requests_over_limit_total", "limit=\"MessageBytes\"", " 1");
    }

    [Fact]
    public async Task Items_of_a_stream_are_counted_like_calls_of_their_own()
    {
        Wire.CheckRequest tooMany = Requests.Outlines();
        tooMany.Knife.Outlines.Blade.Vertices.AddRange(
            Enumerable.Range(0, 61).Select(i => new Wire.Vertex { XMm = i, YMm = i * i })
        );
        Wire.CheckRequest flawed = Requests.Outlines(Catalogue.Designs.KnifeCatalogue.Curlew.ToDrawn());
        List<Wire.CheckManyResponse> answers = await Library.CheckAsync(
            _service.Checker,
            [Library.Item("flawed", flawed), Library.Item("tooMany", tooMany)]
        );
        var findings = answers.Single(answer => answer.Check is not null).Check.Report.Findings;

        await AssertTellsAsync("flushback_item_duration_seconds_count", "work=\"Check\"", "OK", "1");
        await AssertTellsAsync("flushback_item_duration_seconds_count", "work=\"Check\"", "ResourceExhausted", "1");
        await AssertTellsAsync("flushback_requests_over_limit_total", "limit=\"Vertices\"", " 1");
        await AssertTellsAsync(
            "flushback_findings_total",
            $"code=\"{findings[0].Code}\"",
            $" {findings.Count(finding => finding.Code == findings[0].Code)}"
        );
    }

    [Fact]
    public async Task The_depth_of_the_queue_is_told()
    {
        WorkGate gate = _service.Parts.GetRequiredService<WorkGate>();
        List<Turn> taken = [];
        for (int i = 0; i < Environment.ProcessorCount; i++)
        {
            taken.Add(await gate.EnterAsync("somebody", default));
        }

        AsyncUnaryCall<Wire.CheckResponse> waiting = _service.Checker.CheckAsync(Requests.Outlines());
        await Eventually.IsTrueAsync(() => gate.Waiting == 1);

        await AssertTellsAsync("flushback_queue_waiting{", " 1");
        await AssertTellsAsync("flushback_queue_running{", $" {Environment.ProcessorCount}");
        taken.ForEach(turn => turn.Dispose());
        await waiting;
    }

    [Fact]
    public async Task The_address_for_metrics_serves_nothing_else_and_the_others_no_metrics()
    {
        using HttpClient client = new();
        using HttpResponseMessage elsewhere = await client.GetAsync(
            new Uri(_service.OtherAddress, "/flushback.v1.ProfileChecker/Check")
        );
        using HttpRequestMessage request = new(HttpMethod.Get, new Uri(_service.Address, "/metrics"))
        {
            Version = HttpVersion.Version20,
            VersionPolicy = HttpVersionPolicy.RequestVersionExact,
        };
        using HttpResponseMessage metrics = await client.SendAsync(request);

        Assert.Equal(HttpStatusCode.NotFound, elsewhere.StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, metrics.StatusCode);
    }

    // A call is counted when its connection is done with it, which may be after the caller has his answer.
    private async Task AssertTellsAsync(params string[] parts)
    {
        using HttpClient client = new();
        string told = "";
        for (int i = 0; i < 3000; i++)
        {
            told = await client.GetStringAsync(new Uri(_service.OtherAddress, "/metrics"));
            if (told.Split('\n').Any(line => parts.All(part => line.Contains(part, StringComparison.Ordinal))))
            {
                return;
            }

            // The exporter gives the same answer again for a while.
            await Task.Delay(100);
        }

        Assert.Fail($"No line holds {string.Join(" and ", parts)}:\n{told}");
    }
}
