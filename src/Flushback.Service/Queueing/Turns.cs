using System.Diagnostics;
using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Flushback.Service.Telemetry;
using Grpc.Core;

namespace Flushback.Service.Queueing;

/// <summary>Turns at the gate for calls: who asks, how long he may wait, and what he is told when there is no room.</summary>
public sealed class Turns(WorkGate gate, Callers callers, ServiceLimits limits, ServiceMetrics metrics)
{
    // Tells the line of a caller's streams from that of his single calls, which no connection's name ends with.
    private const string OfStreams = " streams";

    /// <summary>Waits for a turn, no longer than a request may take.</summary>
    /// <param name="context">The call that asks.</param>
    /// <returns>The turn; dispose it when the work is done.</returns>
    /// <exception cref="RpcException">UNAVAILABLE with <see cref="Google.Rpc.RetryInfo"/> when there is no room.</exception>
    /// <exception cref="OperationCanceledException">The caller hung up, or his deadline passed.</exception>
    public Task<Turn> TakeAsync(ServerCallContext context) =>
        TakeAsync(callers.NameOf(context), context, retryAfter => Busy.Tell(context, limits, retryAfter));

    /// <summary>Waits for a turn for one item of a stream.</summary>
    /// <remarks>
    /// Items wait in a line of their own, so that a single call takes turns with the streams even of its own connection.
    /// </remarks>
    /// <inheritdoc cref="TakeAsync(ServerCallContext)"/>
    public Task<Turn> TakeForItemAsync(ServerCallContext context) =>
        TakeAsync(
            callers.NameOf(context) + OfStreams,
            context,
            retryAfter => Busy.Status(limits, retryAfter).ToRpcException()
        );

    private async Task<Turn> TakeAsync(string caller, ServerCallContext context, Func<TimeSpan, RpcException> busy)
    {
        using Activity? waiting = ServiceTracing.Source.StartActivity("wait for a turn");
        using WorkTime time = new(limits, context.CancellationToken);
        long from = Stopwatch.GetTimestamp();
        try
        {
            return await gate.EnterAsync(caller, time.Token);
        }
        catch (GateFullException full)
        {
            throw busy(full.RetryAfter);
        }
        catch (OperationCanceledException) when (!context.CancellationToken.IsCancellationRequested)
        {
            throw busy(gate.RetryAfter);
        }
        finally
        {
            metrics.Waited(Stopwatch.GetElapsedTime(from));
        }
    }
}
