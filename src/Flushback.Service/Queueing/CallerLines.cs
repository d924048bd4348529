namespace Flushback.Service.Queueing;

/// <summary>A line for every caller that waits, served one after the other. Not safe for several threads.</summary>
internal sealed class CallerLines
{
    private readonly Dictionary<string, LinkedList<Waiter>> _lines = [];
    private readonly LinkedList<string> _order = [];
    private int _count;

    /// <summary>How many wait in all lines; may be read by any thread.</summary>
    public int Count => Volatile.Read(ref _count);

    /// <summary>Lets a caller's work wait at the end of his line; a new line is served after all others.</summary>
    public Waiter Add(string caller)
    {
        if (!_lines.TryGetValue(caller, out LinkedList<Waiter>? line))
        {
            line = [];
            _lines.Add(caller, line);
            _order.AddLast(caller);
        }

        Waiter waiter = new(caller);
        line.AddLast(waiter);
        _count++;
        return waiter;
    }

    /// <summary>The first of the line whose turn it is, which then goes behind all others; null when nobody waits.</summary>
    public Waiter? TakeNext()
    {
        if (_order.First is not { } first)
        {
            return null;
        }

        Waiter next = _lines[first.Value].First!.Value;
        _order.RemoveFirst();
        _order.AddLast(first);
        Remove(next);
        return next;
    }

    /// <summary>Takes a waiter out; false when he is not there any more.</summary>
    public bool Remove(Waiter waiter)
    {
        if (!_lines.TryGetValue(waiter.Caller, out LinkedList<Waiter>? line) || !line.Remove(waiter))
        {
            return false;
        }

        if (line.Count == 0)
        {
            _lines.Remove(waiter.Caller);
            _order.Remove(waiter.Caller);
        }

        _count--;
        return true;
    }

    /// <summary>Takes the newest of the longest line out for a caller whose line stays shorter all the same; null when none does.</summary>
    public Waiter? GiveWayTo(string caller)
    {
        int own = _lines.TryGetValue(caller, out LinkedList<Waiter>? line) ? line.Count : 0;
        LinkedList<Waiter>? longest = _lines.Values.MaxBy(other => other.Count);
        if (longest is null || longest.Count < own + 2)
        {
            return null;
        }

        Waiter newest = longest.Last!.Value;
        Remove(newest);
        return newest;
    }
}
