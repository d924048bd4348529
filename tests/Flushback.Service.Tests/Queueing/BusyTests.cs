using Flushback.Service.Queueing;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Rpc;
using Grpc.Core;
using Grpc.Net.Client;
using Microsoft.Extensions.DependencyInjection;

namespace Flushback.Service.Tests.Queueing;

public sealed class BusyTests : IAsyncLifetime
{
    private RunningService _service = null!;

    public async Task InitializeAsync() =>
        _service = await RunningService.StartAsync("--Limits:Parallel=1", "--Limits:ItemsInFlight=1");

    public Task DisposeAsync() => _service.DisposeAsync();

    [Fact]
    public async Task A_service_that_is_full_says_unavailable_and_when_to_come_again()
    {
        using Turn taken = await _service.Parts.GetRequiredService<WorkGate>().EnterAsync("somebody", default);

        RpcException busy = await Assert.ThrowsAsync<RpcException>(async () =>
            await _service.Checker.CheckAsync(Requests.Outlines())
        );

        Assert.Equal(StatusCode.Unavailable, busy.StatusCode);
        Google.Rpc.Status status = busy.GetRpcStatus()!;
        TimeSpan delay = status.GetDetail<RetryInfo>()!.RetryDelay.ToTimeSpan();
        Assert.InRange(delay, TimeSpan.FromMilliseconds(50), TimeSpan.FromSeconds(5));
        Assert.Equal("ItemsInFlight", status.GetDetail<ErrorInfo>()!.Metadata["limit"]);
        Assert.Equal($"{(long)delay.TotalMilliseconds}", busy.Trailers.GetValue("grpc-retry-pushback-ms"));
    }

    [Fact]
    public async Task A_service_that_is_full_still_answers_for_its_health()
    {
        using Turn taken = await _service.Parts.GetRequiredService<WorkGate>().EnterAsync("somebody", default);

        var health = await new Grpc.Health.V1.Health.HealthClient(_service.Channel).CheckAsync(new());

        Assert.Equal(Grpc.Health.V1.HealthCheckResponse.Types.ServingStatus.Serving, health.Status);
    }

    [Fact]
    public async Task A_deadline_that_passes_in_the_queue_ends_the_wait()
    {
        RunningService service = await RunningService.StartAsync("--Limits:Parallel=1");
        WorkGate gate = service.Parts.GetRequiredService<WorkGate>();
        using Turn taken = await gate.EnterAsync("somebody", default);

        RpcException late = await Assert.ThrowsAsync<RpcException>(async () =>
            await service.Checker.CheckAsync(
                Requests.Outlines(),
                deadline: TimeProvider.System.GetUtcNow().UtcDateTime.AddMilliseconds(100)
            )
        );

        Assert.Equal(StatusCode.DeadlineExceeded, late.StatusCode);
        await Eventually.IsTrueAsync(() => gate.Waiting == 0);
        await service.DisposeAsync();
    }

    [Fact]
    public async Task Behind_a_proxy_callers_are_told_apart_by_the_header_it_sets()
    {
        RunningService service = await RunningService.StartAsync(
            "--Limits:Parallel=1",
            "--Queue:CallerHeader=x-caller"
        );
        WorkGate gate = service.Parts.GetRequiredService<WorkGate>();
        Turn taken = await gate.EnterAsync("somebody", default);
        List<Task<string>> calls = [];
        foreach (string caller in (string[])[.. Enumerable.Repeat("library", 12), "single"])
        {
            int waiting = gate.Waiting;
            calls.Add(CallAsync(service.Channel, caller));
            await Eventually.IsTrueAsync(() => gate.Waiting == waiting + 1);
        }

        // Behind both lines a third, who keeps his turn: so they move on by one each and stand still.
        Task<Turn> third = gate.EnterAsync("third", default);
        taken.Dispose();
        using Turn kept = await third;
        await Eventually.IsTrueAsync(() => calls.Count(call => call.IsCompleted) == 2);

        Assert.Equal(
            ["library", "single"],
            calls.Where(call => call.IsCompletedSuccessfully).Select(call => call.Result)
        );
        kept.Dispose();
        await Task.WhenAll(calls);
        await service.DisposeAsync();
    }

    private static async Task<string> CallAsync(GrpcChannel channel, string caller)
    {
        Wire.ProfileChecker.ProfileCheckerClient checker = new(channel);
        await checker.CheckAsync(Requests.Outlines(), new Metadata { { "x-caller", caller } });
        return caller;
    }
}
