using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;
using Microsoft.Extensions.Logging;

namespace Flushback.Service.Tests.BadInput;

public sealed class FaultsTests(RunningService service) : IClassFixture<RunningService>
{
    [Fact]
    public async Task A_fault_of_ours_is_internal_in_a_plain_sentence_and_whole_in_the_log()
    {
        ListLogger log = new();
        LastResortInterceptor interceptor = new(new Faults(new ServiceLimits(), log));

        RpcException thrown = await Assert.ThrowsAsync<RpcException>(() =>
            interceptor.UnaryServerHandler<Wire.CheckRequest, Wire.CheckResponse>(
                new Wire.CheckRequest(),
                new CallContext(),
                (_, _) => throw new InvalidOperationException("the inner workings")
            )
        );

        Assert.Equal(StatusCode.Internal, thrown.StatusCode);
        Assert.Equal(Faults.Sentence, thrown.Status.Detail);
        Assert.Null(thrown.Status.DebugException);
        Assert.Equal("the inner workings", Assert.Single(log.Told).Message);
    }

    [Fact]
    public async Task A_deadline_that_has_passed_ends_the_check()
    {
        RpcException thrown = await Assert.ThrowsAsync<RpcException>(async () =>
            await service.Checker.CheckAsync(
                SecondsOfWork(),
                deadline: TimeProvider.System.GetUtcNow().UtcDateTime.AddMilliseconds(5)
            )
        );

        Assert.Equal(StatusCode.DeadlineExceeded, thrown.StatusCode);
    }

    [Fact]
    public async Task A_caller_who_hangs_up_ends_the_check()
    {
        using CancellationTokenSource hangUp = new(TimeSpan.FromMilliseconds(5));

        RpcException thrown = await Assert.ThrowsAsync<RpcException>(async () =>
            await service.Checker.CheckAsync(SecondsOfWork(), cancellationToken: hangUp.Token)
        );

        Assert.Equal(StatusCode.Cancelled, thrown.StatusCode);
    }

    [Fact]
    public async Task A_deadline_that_has_passed_ends_the_inspection()
    {
        RpcException thrown = await Assert.ThrowsAsync<RpcException>(async () =>
            await service.Inspector.InspectAsync(
                SheetRequests.Of(LimitsTests.SecondsOfWork()),
                deadline: TimeProvider.System.GetUtcNow().UtcDateTime.AddMilliseconds(5)
            )
        );

        Assert.Equal(StatusCode.DeadlineExceeded, thrown.StatusCode);
    }

    [Fact]
    public async Task A_caller_who_hangs_up_ends_the_inspection()
    {
        using CancellationTokenSource hangUp = new(TimeSpan.FromMilliseconds(5));

        RpcException thrown = await Assert.ThrowsAsync<RpcException>(async () =>
            await service.Inspector.InspectAsync(
                SheetRequests.Of(LimitsTests.SecondsOfWork()),
                cancellationToken: hangUp.Token
            )
        );

        Assert.Equal(StatusCode.Cancelled, thrown.StatusCode);
    }

    private static Wire.CheckRequest SecondsOfWork() => Requests.Outlines(FinelyDrawn.AtTheLimit());

    private sealed class ListLogger : ILogger<Faults>
    {
        public List<Exception> Told { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel,
            EventId eventId,
            TState state,
            Exception? exception,
            Func<TState, Exception?, string> formatter
        ) => Told.Add(exception!);
    }
}
