using Flushback.Cli.Regression.Items;
using Grpc.Core;

namespace Flushback.Cli.Regression.Running;

/// <summary>Has every item of a library answered, over as many streams as it takes, one after the other.</summary>
/// <remarks>
/// A stream that breaks loses nothing: what is not answered goes over the next one. Between them is a pause that grows,
/// and after so many without a single answer the run gives up; the journal keeps what is finished.
/// </remarks>
internal sealed class LibraryRun(ItemStreams streams, Answers answers)
{
    private const int MostTriesInARow = 10;
    private static readonly TimeSpan _firstPause = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan _longestPause = TimeSpan.FromSeconds(2);

    /// <summary>What became of each item, by path.</summary>
    /// <exception cref="RpcException">No service answers, or it does not let this program in.</exception>
    public async Task<IReadOnlyDictionary<string, Answered>> FinishAsync(
        IReadOnlyList<LibraryItem> items,
        CancellationToken cancellation
    )
    {
        int triesInARow = 0;
        while (answers.Count < items.Count)
        {
            int before = answers.Count;
            try
            {
                LibraryItem[] open = [.. items.Where(item => !answers.Has(item))];
                await streams.AnswerAsync(open, cancellation);
            }
            catch (RpcException lost) when (IsLoss(lost) && !cancellation.IsCancellationRequested)
            {
                triesInARow = answers.Count > before ? 1 : triesInARow + 1;
                if (triesInARow >= MostTriesInARow)
                {
                    throw;
                }

                await Task.Delay(PauseAfter(triesInARow), cancellation);
            }
        }

        return answers.All;
    }

    // A service that is gone, or was told to stop, comes back, or another takes its place; one that does not know the
    // call, or the caller, says so again.
    private static bool IsLoss(RpcException fault) =>
        fault.StatusCode
            is StatusCode.Unavailable
                or StatusCode.Internal
                or StatusCode.Cancelled
                or StatusCode.Unknown
                or StatusCode.Aborted
        && !HasCause<System.Security.Authentication.AuthenticationException>(fault.Status.DebugException);

    private static bool HasCause<TCause>(Exception? fault) =>
        fault is not null && (fault is TCause || HasCause<TCause>(fault.InnerException));

    private static TimeSpan PauseAfter(int tries) =>
        TimeSpan.FromTicks(Math.Min(_longestPause.Ticks, _firstPause.Ticks << (tries - 1)));
}
