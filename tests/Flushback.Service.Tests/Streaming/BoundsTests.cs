using Flushback.Service.Queueing;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Rpc;
using Grpc.Core;
using Grpc.Net.Client;
using Microsoft.Extensions.DependencyInjection;

namespace Flushback.Service.Tests.Streaming;

/// <summary>How much of a stream is taken in, and what that leaves for others.</summary>
public sealed class BoundsTests
{
    [Fact]
    public async Task No_more_items_are_taken_in_than_the_limit_whatever_is_sent()
    {
        RunningService service = await RunningService.StartAsync("--Limits:Parallel=1", "--Limits:StreamItems=4");
        WorkGate gate = service.Parts.GetRequiredService<WorkGate>();
        Turn taken = await gate.EnterAsync("somebody", default);
        using var call = service.Checker.CheckMany();
        Task<List<Wire.CheckManyResponse>> answers = Library.GatherAsync(call.ResponseStream);
        foreach (Wire.CheckManyRequest item in Library.Of(40))
        {
            await call.RequestStream.WriteAsync(item);
        }

        await call.RequestStream.CompleteAsync();

        // One item by one is let through, and each time another moves up.
        for (int i = 0; i < 30; i++)
        {
            await Eventually.IsTrueAsync(() => gate.Waiting >= 4);
            Assert.Equal(4, gate.Waiting);
            Task<Turn> next = gate.EnterAsync("somebody", default);
            taken.Dispose();
            taken = await next;
        }

        taken.Dispose();
        Assert.Equal(40, (await answers).Count);
        await service.DisposeAsync();
    }

    [Fact]
    public async Task A_sender_who_is_not_answered_is_held_up_by_the_connection()
    {
        RunningService service = await RunningService.StartAsync("--Limits:Parallel=1", "--Limits:StreamItems=2");
        using Turn taken = await service.Parts.GetRequiredService<WorkGate>().EnterAsync("somebody", default);
        using var call = service.Checker.CheckMany();
        Wire.CheckManyRequest megabyte = Library.Item("1", Requests.Drawing(new byte[1024 * 1024]));

        // Far more than the windows of HTTP/2 and the sockets hold on both sides.
        const int Sent = 64;
        int written = 0;
        Task sending = Task.Run(async () =>
        {
            for (; written < Sent; written++)
            {
                await call.RequestStream.WriteAsync(megabyte);
            }
        });
        await Eventually.IsTrueAsync(() => Volatile.Read(ref written) >= 2);
        await StandsStillAsync(() => Volatile.Read(ref written));

        Assert.False(sending.IsCompleted);
        Assert.InRange(written, 2, 24);
        call.Dispose();
        await Assert.ThrowsAnyAsync<Exception>(() => sending);
        await service.DisposeAsync();
    }

    [Fact]
    public async Task An_item_for_which_there_is_no_room_is_told_when_to_come_again_and_the_stream_goes_on()
    {
        RunningService service = await RunningService.StartAsync("--Limits:Parallel=1", "--Limits:ItemsInFlight=1");
        using var call = service.Checker.CheckMany();
        using (await service.Parts.GetRequiredService<WorkGate>().EnterAsync("somebody", default))
        {
            await call.RequestStream.WriteAsync(Library.Item("early"));
            Assert.True(await call.ResponseStream.MoveNext(default));
        }

        Wire.ItemError busy = call.ResponseStream.Current.Error;
        Assert.Equal(StatusCode.Unavailable, (StatusCode)busy.Code);
        TimeSpan delay = busy.Details[0].Unpack<RetryInfo>().RetryDelay.ToTimeSpan();
        Assert.InRange(delay, TimeSpan.FromMilliseconds(50), TimeSpan.FromSeconds(5));
        Assert.Equal("ItemsInFlight", busy.Details[1].Unpack<ErrorInfo>().Metadata["limit"]);

        await call.RequestStream.WriteAsync(Library.Item("again"));
        Assert.True(await call.ResponseStream.MoveNext(default));
        Assert.NotNull(call.ResponseStream.Current.Check);
        await call.RequestStream.CompleteAsync();
        Assert.False(await call.ResponseStream.MoveNext(default));
        Assert.Equal(StatusCode.OK, call.GetStatus().StatusCode);
        await service.DisposeAsync();
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_single_check_waits_behind_one_item_of_a_flood_even_on_the_same_connection(bool sameConnection)
    {
        RunningService service = await RunningService.StartAsync("--Limits:Parallel=1", "--Limits:StreamItems=50");
        WorkGate gate = service.Parts.GetRequiredService<WorkGate>();
        Turn taken = await gate.EnterAsync("somebody", default);
        using var flood = service.Checker.CheckMany();
        foreach (Wire.CheckManyRequest item in Library.Of(50))
        {
            await flood.RequestStream.WriteAsync(item);
        }

        await Eventually.IsTrueAsync(() => gate.Waiting == 50);
        using GrpcChannel other = GrpcChannel.ForAddress(service.Address);
        Wire.ProfileChecker.ProfileCheckerClient caller = new(sameConnection ? service.Channel : other);
        Task<Wire.CheckResponse> single = caller.CheckAsync(Requests.Outlines()).ResponseAsync;
        await Eventually.IsTrueAsync(() => gate.Waiting == 51);

        // Behind the flood and the single check a third, who keeps his turn: so the lines move on by one each and stand still.
        Task<Turn> third = gate.EnterAsync("third", default);
        taken.Dispose();
        await single;
        using Turn kept = await third;

        Assert.Equal(49, gate.Waiting);
        kept.Dispose();
        await service.DisposeAsync();
    }

    [Fact]
    public async Task While_a_single_check_is_answered_few_items_of_a_flood_are()
    {
        const int InHand = 100;
        RunningService service = await RunningService.StartAsync(
            "--Limits:Parallel=1",
            $"--Limits:StreamItems={InHand}"
        );
        WorkGate gate = service.Parts.GetRequiredService<WorkGate>();
        using GrpcChannel other = GrpcChannel.ForAddress(service.Address);
        Wire.ProfileChecker.ProfileCheckerClient single = new(other);
        using CancellationTokenSource enough = new();
        Flood flood = new(service);
        Turn taken = await gate.EnterAsync("somebody", default);
        Task flooding = flood.RunAsync(enough.Token);
        await Eventually.IsTrueAsync(() => gate.Waiting == InHand);
        taken.Dispose();

        List<int> meanwhile = [];
        for (int i = 0; i < 11; i++)
        {
            int before = flood.Answered;
            await single.CheckAsync(Requests.Outlines());
            meanwhile.Add(flood.Answered - before);
        }

        await enough.CancelAsync();
        await flooding;

        // One in line behind the flood would wait for all that is in hand. Counted, not timed: a slow machine is slow for
        // both. The one in the middle, as the machine may halt the caller with his answer in his hand.
        meanwhile.Sort();
        Assert.InRange(meanwhile[meanwhile.Count / 2], 0, InHand / 4);
        await service.DisposeAsync();
    }

    /// <summary>Waits until a number has not grown for many looks.</summary>
    private static async Task StandsStillAsync(Func<int> number)
    {
        int last = number();
        for (int looks = 0; looks < 100; looks++)
        {
            await Task.Delay(10);
            if (number() != last)
            {
                (last, looks) = (number(), 0);
            }
        }
    }

    /// <summary>A stream that is sent items as fast as it takes them.</summary>
    private sealed class Flood(RunningService service)
    {
        private int _answered;

        public int Answered => Volatile.Read(ref _answered);

        public async Task RunAsync(CancellationToken enough)
        {
            using var call = service.Checker.CheckMany(cancellationToken: CancellationToken.None);
            Task answers = CountAsync(call.ResponseStream);
            int sent = 0;
            for (; !enough.IsCancellationRequested; sent++)
            {
                await call.RequestStream.WriteAsync(Library.Item($"{sent}"), CancellationToken.None);
            }

            await call.RequestStream.CompleteAsync();
            await answers;
            Assert.Equal(sent, Answered);
        }

        private async Task CountAsync(IAsyncStreamReader<Wire.CheckManyResponse> answers)
        {
            await foreach (Wire.CheckManyResponse answer in answers.ReadAllAsync())
            {
                // One that was refused is missed at the end: whoever does not read holds up the stream.
                if (answer.Check is not null)
                {
                    Interlocked.Increment(ref _answered);
                }
            }
        }
    }
}
