using System.Diagnostics;
using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Flushback.Service.Telemetry;
using Grpc.Core;

namespace Flushback.Service.Queueing;

/// <summary>Turns at the gate for calls: who asks, how long he may wait, and what he is told when there is no room.</summary>
public sealed class Turns(WorkGate gate, Callers callers, ServiceLimits limits, ServiceMetrics metrics)
{
    /// <summary>Waits for a turn, no longer than a request may take.</summary>
    /// <param name="context">The call that asks.</param>
    /// <returns>The turn; dispose it when the work is done.</returns>
    /// <exception cref="RpcException">UNAVAILABLE with <see cref="Google.Rpc.RetryInfo"/> when there is no room.</exception>
    /// <exception cref="OperationCanceledException">The caller hung up, or his deadline passed.</exception>
    public async Task<Turn> TakeAsync(ServerCallContext context)
    {
        using Activity? waiting = ServiceTracing.Source.StartActivity("wait for a turn");
        using WorkTime time = new(limits, context.CancellationToken);
        long from = Stopwatch.GetTimestamp();
        try
        {
            return await gate.EnterAsync(callers.NameOf(context), time.Token);
        }
        catch (GateFullException full)
        {
            throw Busy.Tell(context, limits, full.RetryAfter);
        }
        catch (OperationCanceledException) when (!context.CancellationToken.IsCancellationRequested)
        {
            throw Busy.Tell(context, limits, gate.RetryAfter);
        }
        finally
        {
            metrics.Waited(Stopwatch.GetElapsedTime(from));
        }
    }
}
