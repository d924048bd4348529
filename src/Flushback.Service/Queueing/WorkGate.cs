using System.Diagnostics;

namespace Flushback.Service.Queueing;

/// <summary>Lets so much work be done at once; what is more waits, and callers take turns whatever they have waiting.</summary>
/// <remarks>
/// Each caller's work waits in a line of its own and the lines are served one after the other, so that a caller with one
/// drawing waits behind one of a library's, not behind all of them. When the gate is full the newest of the longest line
/// gives way to a caller whose line is shorter by two or more.
/// </remarks>
/// <param name="parallel">How much work is done at once; at least 1.</param>
/// <param name="inFlight">How much is done or waits; at least <paramref name="parallel"/>.</param>
public sealed class WorkGate(int parallel, int inFlight)
{
    // Weight of the newest piece of work in the mean of its time; it only has to follow the load.
    private const double NewestWeight = 0.1;

    private static readonly TimeSpan _shortestRetry = TimeSpan.FromMilliseconds(50);
    private static readonly TimeSpan _longestRetry = TimeSpan.FromSeconds(5);

    private readonly Lock _lock = new();
    private readonly CallerLines _lines = new();
    private int _running;
    private double _meanSeconds;

    /// <summary>How much is being done.</summary>
    public int Running => Volatile.Read(ref _running);

    /// <summary>How much waits.</summary>
    public int Waiting => _lines.Count;

    /// <summary>Waits for a turn.</summary>
    /// <param name="caller">Whose work it is.</param>
    /// <param name="cancellation">Gives the place in the line up.</param>
    /// <returns>The turn; dispose it when the work is done.</returns>
    /// <exception cref="GateFullException">Too much is waiting already, or this gave way to another caller.</exception>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public Task<Turn> EnterAsync(string caller, CancellationToken cancellation)
    {
        Waiter waiter;
        lock (_lock)
        {
            if (_running < parallel)
            {
                _running++;
                return Task.FromResult(new Turn(this));
            }

            // Only whoever has to wait can be too late for his turn; he takes nobody's place.
            cancellation.ThrowIfCancellationRequested();
            if (_running + _lines.Count >= inFlight)
            {
                if (_lines.GiveWayTo(caller) is not { } displaced)
                {
                    throw new GateFullException(RetryAfter);
                }

                displaced.Refuse(new GateFullException(RetryAfter));
            }

            waiter = _lines.Add(caller);
        }

        return WaitAsync(waiter, cancellation);
    }

    /// <summary>When another try is likely to find room: the time in which what waits now is done.</summary>
    internal TimeSpan RetryAfter
    {
        get
        {
            double seconds = _meanSeconds * (_lines.Count + 1) / parallel;
            return TimeSpan.FromSeconds(Math.Clamp(seconds, _shortestRetry.TotalSeconds, _longestRetry.TotalSeconds));
        }
    }

    /// <summary>Ends a turn and hands it to the next in line.</summary>
    internal void Leave(long startedAt)
    {
        lock (_lock)
        {
            double seconds = Stopwatch.GetElapsedTime(startedAt).TotalSeconds;
            _meanSeconds += NewestWeight * (seconds - _meanSeconds);
            if (_lines.TakeNext() is { } next)
            {
                next.Admit(new Turn(this));
            }
            else
            {
                _running--;
            }
        }
    }

    private async Task<Turn> WaitAsync(Waiter waiter, CancellationToken cancellation)
    {
        await using CancellationTokenRegistration registration = cancellation.Register(() => GiveUp(waiter));
        Turn turn = await waiter.Turn;
        turn.Start();
        return turn;
    }

    private void GiveUp(Waiter waiter)
    {
        lock (_lock)
        {
            if (_lines.Remove(waiter))
            {
                waiter.Cancel();
            }
        }
    }
}
