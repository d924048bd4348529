using Flushback.Mechanism.Tolerances;
using Flushback.Service.Limits;
using Flushback.Service.Queueing;
using Flushback.Service.Telemetry;
using Grpc.Core;

namespace Flushback.Service.Studies;

/// <summary>Has the parts of a study solved slice by slice, a turn at the gate for each.</summary>
/// <remarks>
/// A slice is a few hundredths of a second, after which whoever waits has his turn, so that a study of thousands of parts
/// holds up single checks no longer than another check would. Each turn may take as long as a request may.
/// </remarks>
internal sealed class StudySlices(
    ToleranceStudy study,
    Turns turns,
    ServiceLimits limits,
    ServiceMetrics metrics,
    ServerCallContext context
)
{
    private static readonly TimeSpan _betweenProgress = TimeSpan.FromMilliseconds(100);

    // While the gate has no room a study that has begun waits instead of losing what it has.
    private static readonly TimeSpan _whileFull = TimeSpan.FromMilliseconds(250);

    private int _next = -1;
    private int _solved;

    /// <summary>Solves all parts, and tells now and then how many are.</summary>
    /// <param name="tell">Tells; never called twice at a time.</param>
    /// <exception cref="OperationCanceledException">The caller hung up, or a turn took too long.</exception>
    public async Task SolveAsync(Func<int, Task> tell)
    {
        using CancellationTokenSource ending = CancellationTokenSource.CreateLinkedTokenSource(
            context.CancellationToken
        );
        int workers = limits.Parallel > 0 ? limits.Parallel : Environment.ProcessorCount;
        Task solving = Task.WhenAll(
            Enumerable
                .Range(0, Math.Min(workers, study.Slices))
                .Select(_ => Task.Run(() => WorkAsync(ending), CancellationToken.None))
        );
        try
        {
            while (await Task.WhenAny(solving, Task.Delay(_betweenProgress, ending.Token)) != solving)
            {
                ending.Token.ThrowIfCancellationRequested();
                await tell(Volatile.Read(ref _solved));
            }
        }
        finally
        {
            if (!solving.IsCompleted)
            {
                await ending.CancelAsync();
            }

            await solving;
        }

        await tell(study.Settings.Parts);
    }

    /// <summary>Does some work in a turn of its own.</summary>
    public async Task<TResult> InTurnAsync<TResult>(Func<CancellationToken, TResult> work)
    {
        using Turn turn = await TakeAsync(context.CancellationToken);
        using WorkTime time = new(limits, context.CancellationToken);
        return work(time.Token);
    }

    private async Task WorkAsync(CancellationTokenSource ending)
    {
        try
        {
            for (int slice; (slice = Interlocked.Increment(ref _next)) < study.Slices; )
            {
                using Turn turn = await TakeAsync(ending.Token);
                using WorkTime time = new(limits, ending.Token);
                study.ReadSlice(slice, time.Token);
                Interlocked.Add(ref _solved, study.PartsIn(slice));
                metrics.Solved(study.PartsIn(slice));
            }
        }
        catch
        {
            // What one can not do the others need not go on with.
            await ending.CancelAsync();
            throw;
        }
    }

    private async Task<Turn> TakeAsync(CancellationToken cancellation)
    {
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            try
            {
                return await turns.TakeAsync(context);
            }
            catch (RpcException busy) when (busy.StatusCode == StatusCode.Unavailable)
            {
                await Task.Delay(_whileFull, cancellation);
            }
        }
    }
}
