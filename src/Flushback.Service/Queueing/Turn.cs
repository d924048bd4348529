using System.Diagnostics;

namespace Flushback.Service.Queueing;

/// <summary>A turn at the <see cref="WorkGate"/>: whoever holds it may compute until it is disposed.</summary>
public sealed class Turn : IDisposable
{
    private WorkGate? _gate;
    private long _startedAt = Stopwatch.GetTimestamp();

    internal Turn(WorkGate gate) => _gate = gate;

    /// <summary>Ends the turn; a second time does nothing.</summary>
    public void Dispose() => Interlocked.Exchange(ref _gate, null)?.Leave(_startedAt);

    /// <summary>Starts the clock anew, for a turn that had to be waited for.</summary>
    internal void Start() => _startedAt = Stopwatch.GetTimestamp();
}
