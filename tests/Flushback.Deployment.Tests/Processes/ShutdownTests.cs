using Flushback.Deployment.Tests.Running;
using Grpc.Core;
using Grpc.Health.V1;

namespace Flushback.Deployment.Tests.Processes;

/// <summary>A service that is told to stop.</summary>
[Collection(Published.Name)]
public sealed class ShutdownTests(PublishedService published)
{
    private static readonly TimeSpan _longest = TimeSpan.FromSeconds(60);

    [Fact]
    public async Task It_says_not_ready_finishes_what_is_under_way_and_ends_with_0()
    {
        await using Replica replica = await Replica.StartAsync(published, "--Drain:NoticeSeconds=3");
        AsyncUnaryCall<Wire.CheckResponse> underWay = replica.Checker.CheckAsync(Checks.OfSeconds());
        await Task.Delay(200);

        replica.Program.Terminate();

        await UntilAsync(async () =>
            await replica.HealthAsync("ready") == HealthCheckResponse.Types.ServingStatus.NotServing
        );
        Assert.Equal(HealthCheckResponse.Types.ServingStatus.Serving, await replica.HealthAsync("live"));
        Assert.Equal(3, (await underWay).Report.Stops.Count);
        Assert.Equal(0, await replica.Program.EndAsync(_longest));
        Assert.Null(await replica.HealthAsync("live"));
    }

    [Fact]
    public async Task Work_that_does_not_end_in_the_time_it_is_given_is_cut_off()
    {
        await using Replica replica = await Replica.StartAsync(
            published,
            "--Drain:FinishSeconds=0.2",
            "--Limits:Vertices=100000"
        );
        Wire.CheckRequest endless = Checks.OfSeconds();
        endless.Bench.StepDeg = 0.025;
        AsyncUnaryCall<Wire.CheckResponse> underWay = replica.Checker.CheckAsync(
            endless,
            deadline: TimeProvider.System.GetUtcNow().UtcDateTime.AddSeconds(50)
        );
        await Task.Delay(200);

        replica.Program.Terminate();

        await replica.Program.EndAsync(_longest);
        RpcException cutOff = await Assert.ThrowsAsync<RpcException>(async () => await underWay);
        Assert.NotEqual(StatusCode.OK, cutOff.StatusCode);
    }

    private static async Task UntilAsync(Func<Task<bool>> condition)
    {
        using CancellationTokenSource late = new(_longest);
        while (!await condition())
        {
            await Task.Delay(20, late.Token);
        }
    }
}
