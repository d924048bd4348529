namespace Flushback.Service.Limits;

/// <summary>The time one request may take: until the caller hangs up, its deadline passes, or the limit is reached.</summary>
internal sealed class WorkTime : IDisposable
{
    private readonly CancellationTokenSource _source;

    /// <summary>Starts the clock.</summary>
    /// <param name="limits">Gives the longest time.</param>
    /// <param name="caller">Cancelled when the caller hangs up or its deadline passes.</param>
    public WorkTime(ServiceLimits limits, CancellationToken caller)
    {
        _source = CancellationTokenSource.CreateLinkedTokenSource(caller);
        _source.CancelAfter(TimeSpan.FromSeconds(limits.Seconds));
    }

    /// <summary>Cancelled when the time is over.</summary>
    public CancellationToken Token => _source.Token;

    /// <inheritdoc/>
    public void Dispose() => _source.Dispose();
}
