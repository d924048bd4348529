using System.Text.RegularExpressions;
using Flushback.Deployment.Tests.Running;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Net.Client;

namespace Flushback.Deployment.Tests.Processes;

/// <summary>A service that is told to stop.</summary>
[Collection(Published.Name)]
public sealed class ShutdownTests(PublishedService published) : IDisposable
{
    private readonly KeptPort _metrics = new();

    [Fact]
    public async Task It_says_not_ready_finishes_what_is_under_way_and_ends_with_0()
    {
        // Enough notice to ask for its health in, and work that a slow machine may take its time for.
        await using Replica replica = await StartAsync(
            "--Drain:NoticeSeconds=10",
            "--Drain:FinishSeconds=600",
            "--Limits:Seconds=600"
        );
        using GrpcChannel channel = GrpcChannel.ForAddress(replica.Address);
        AsyncUnaryCall<Wire.CheckResponse> underWay = Check(channel, Checks.OfSeconds());
        await IsUnderWayAsync();

        replica.Program.Terminate();

        // By the connection that is open, so that both are asked well within the notice.
        await Eventually.IsTrueAsync(async () =>
            await HealthAsync(channel, "ready") == HealthCheckResponse.Types.ServingStatus.NotServing
        );
        Assert.Equal(HealthCheckResponse.Types.ServingStatus.Serving, await HealthAsync(channel, "live"));
        Assert.Equal(3, (await underWay).Report.Stops.Count);
        Assert.Equal(0, await replica.Program.EndAsync());
        Assert.Null(await replica.HealthAsync("live"));
    }

    [Fact]
    public async Task Work_that_does_not_end_in_the_time_it_is_given_is_cut_off()
    {
        await using Replica replica = await StartAsync("--Drain:FinishSeconds=0.2");
        using GrpcChannel channel = GrpcChannel.ForAddress(replica.Address);
        AsyncUnaryCall<Wire.CheckResponse> underWay = Check(channel, Requests.Outlines(FinelyDrawn.AtTheLimit()));
        await IsUnderWayAsync();

        replica.Program.Terminate();

        await replica.Program.EndAsync();
        RpcException cutOff = await Assert.ThrowsAsync<RpcException>(async () => await underWay);
        Assert.NotEqual(StatusCode.OK, cutOff.StatusCode);
    }

    public void Dispose() => _metrics.Dispose();

    private Task<Replica> StartAsync(params string[] args) =>
        Replica.StartAsync(published, [$"--Telemetry:MetricsUrl=http://127.0.0.1:{_metrics.Number}", .. args]);

    // By a connection that tries nothing again: once cut off it stays so.
    private static AsyncUnaryCall<Wire.CheckResponse> Check(GrpcChannel channel, Wire.CheckRequest request) =>
        new Wire.ProfileChecker.ProfileCheckerClient(channel).CheckAsync(request);

    private static async Task<HealthCheckResponse.Types.ServingStatus> HealthAsync(
        GrpcChannel channel,
        string service
    ) => (await new Health.HealthClient(channel).CheckAsync(new HealthCheckRequest { Service = service })).Status;

    private async Task IsUnderWayAsync()
    {
        using HttpClient client = new();
        Uri metrics = new($"http://127.0.0.1:{_metrics.Number}/metrics");
        await Eventually.IsTrueAsync(async () =>
            Regex.IsMatch(
                await client.GetStringAsync(metrics),
                @"^flushback_queue_running\{[^}]*\} 1\b",
                RegexOptions.Multiline
            )
        );
    }
}
