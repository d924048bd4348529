namespace Flushback.Service.Limits;

/// <summary>The time one check may take: until the caller hangs up, its deadline passes, or the limit is reached.</summary>
internal sealed class WorkTime : IDisposable
{
    private readonly CancellationTokenSource source;

    /// <summary>Starts the clock.</summary>
    /// <param name="limits">Gives the longest time.</param>
    /// <param name="caller">Cancelled when the caller hangs up or its deadline passes.</param>
    public WorkTime(ServiceLimits limits, CancellationToken caller)
    {
        source = CancellationTokenSource.CreateLinkedTokenSource(caller);
        source.CancelAfter(TimeSpan.FromSeconds(limits.Seconds));
    }

    /// <summary>Cancelled when the time is over.</summary>
    public CancellationToken Token => source.Token;

    /// <inheritdoc/>
    public void Dispose() => source.Dispose();
}
