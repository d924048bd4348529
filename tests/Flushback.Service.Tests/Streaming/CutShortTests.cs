using Flushback.Service.Errors;
using Flushback.Service.Queueing;
using Flushback.Service.Tests.BadInput;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Rpc;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;

namespace Flushback.Service.Tests.Streaming;

/// <summary>Streams that do not come to their end: what was taken in is answered, and nothing is left running.</summary>
public sealed class CutShortTests
{
    // The error code of HTTP/2 for a connection that ends in order, RFC 9113, section 7.
    private const long NoError = 0;

    [Fact]
    public async Task A_message_over_its_limit_ends_the_stream_once_all_before_it_is_answered()
    {
        RunningService service = await RunningService.StartAsync("--Limits:MessageBytes=100000");
        using var call = service.Checker.CheckMany();
        foreach (Wire.CheckManyRequest item in Library.Of(10))
        {
            await call.RequestStream.WriteAsync(item);
        }

        // Refused by its length alone, perhaps before all of it is sent: then the sending fails too.
        Task sending = call.RequestStream.WriteAsync(Library.Item("huge", Requests.Drawing(new byte[100_001])));
        List<string> answered = [];
        RpcException ended = await Assert.ThrowsAsync<RpcException>(async () =>
        {
            while (await call.ResponseStream.MoveNext(default))
            {
                answered.Add(call.ResponseStream.Current.ItemId);
            }
        });

        Assert.Equal(
            Enumerable.Range(0, 10).Select(i => $"{i}"),
            answered.OrderBy(id => int.Parse(id, System.Globalization.CultureInfo.InvariantCulture))
        );
        Assert.Equal(StatusCode.ResourceExhausted, ended.StatusCode);
        Assert.Equal("MessageBytes", Refused.From(ended).Limit!.Metadata["limit"]);
        await sending.ContinueWith(_ => { }, TaskScheduler.Default);
        await service.DisposeAsync();
    }

    [Fact]
    public async Task Bytes_that_are_no_item_end_the_stream_with_their_reason()
    {
        RunningService service = await RunningService.StartAsync();
        Method<byte[], byte[]> raw = new(
            MethodType.DuplexStreaming,
            "flushback.v1.ProfileChecker",
            "CheckMany",
            Marshallers.Create(bytes => bytes, bytes => bytes),
            Marshallers.Create(bytes => bytes, bytes => bytes)
        );
        using var call = service.Channel.CreateCallInvoker().AsyncDuplexStreamingCall(raw, null, default);
        await call.RequestStream.WriteAsync([0xff, 0xff, 0xff]);

        RpcException ended = await Assert.ThrowsAsync<RpcException>(() => call.ResponseStream.MoveNext(default));

        Assert.Equal(StatusCode.InvalidArgument, ended.StatusCode);
        Assert.Equal(UnreadableMessage.Reason, ended.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Reason);
        await service.DisposeAsync();
    }

    [Fact]
    public async Task Whoever_hangs_up_frees_every_place_at_the_gate()
    {
        RunningService service = await RunningService.StartAsync("--Limits:Parallel=1");
        WorkGate gate = service.Parts.GetRequiredService<WorkGate>();
        using Turn taken = await gate.EnterAsync("somebody", default);
        using (var call = service.Checker.CheckMany())
        {
            foreach (Wire.CheckManyRequest item in Library.Of(8))
            {
                await call.RequestStream.WriteAsync(item);
            }

            await Eventually.IsTrueAsync(() => gate.Waiting == 8);
        }

        await Eventually.IsTrueAsync(() => gate.Waiting == 0);
        await service.DisposeAsync();
    }

    [Fact]
    public async Task A_service_told_to_stop_answers_what_it_has_taken_in_and_says_that_it_takes_no_more()
    {
        RunningService service = await RunningService.StartAsync("--Limits:Parallel=1", "--Limits:StreamItems=4");
        WorkGate gate = service.Parts.GetRequiredService<WorkGate>();
        Turn taken = await gate.EnterAsync("somebody", default);
        using var call = service.Checker.CheckMany();
        foreach (Wire.CheckManyRequest item in Library.Of(12))
        {
            await call.RequestStream.WriteAsync(item);
        }

        await Eventually.IsTrueAsync(() => gate.Waiting == 4);
        service.Parts.GetRequiredService<IHostApplicationLifetime>().StopApplication();
        Task stopped = service.StopAsync();
        await Eventually.IsTrueAsync(() =>
            service.Parts.GetRequiredService<Service.Hosting.Draining>().Finishing.IsCancellationRequested
        );
        taken.Dispose();

        List<string> answered = [];
        RpcException ended = await Assert.ThrowsAsync<RpcException>(async () =>
        {
            while (await call.ResponseStream.MoveNext(default))
            {
                Assert.NotNull(call.ResponseStream.Current.Check);
                answered.Add(call.ResponseStream.Current.ItemId);
            }
        });

        // The answers may still lie in the connection as it closes: then they are lost to the caller, who sends again.
        AssertTakesNoMore(ended);
        Assert.Subset(new HashSet<string>(["0", "1", "2", "3"]), new HashSet<string>(answered));
        Assert.Equal(0, gate.Waiting);
        await Eventually.EndsAsync(stopped);
        await service.DisposeAsync();
    }

    [Fact]
    public async Task A_stream_that_waits_for_more_does_not_hold_up_the_end()
    {
        RunningService service = await RunningService.StartAsync();
        using var call = service.Checker.CheckMany();
        await call.RequestStream.WriteAsync(Library.Item("only"));
        Assert.True(await call.ResponseStream.MoveNext(default));

        // Whoever waits for more reads; a caller who does not keeps his connection, and the service gives him its time to end.
        Task<bool> more = call.ResponseStream.MoveNext(default);
        await Eventually.EndsAsync(service.StopAsync());

        RpcException ended = await Assert.ThrowsAsync<RpcException>(() => more);
        AssertTakesNoMore(ended);
        await service.DisposeAsync();
    }

    // The status, unless the connection closes before the client has read it.
    private static void AssertTakesNoMore(RpcException ended)
    {
        if (ended.Status.DebugException is not HttpProtocolException { ErrorCode: NoError })
        {
            Assert.Equal(StatusCode.Unavailable, ended.StatusCode);
            Assert.Contains("send what is not answered again", ended.Status.Detail, StringComparison.Ordinal);
        }
    }
}
