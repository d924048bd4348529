namespace Flushback.Load;

/// <summary>Times of answers, gathered by many callers.</summary>
internal sealed class Latencies
{
    private readonly Lock _lock = new();
    private readonly List<double> _wholeMs = [];
    private int _taken;

    /// <summary>Adds one.</summary>
    public void Add(TimeSpan latency)
    {
        lock (_lock)
        {
            _wholeMs.Add(latency.TotalMilliseconds);
        }
    }

    /// <summary>Those since the last part was taken, shortest first, in milliseconds.</summary>
    public double[] TakePart()
    {
        lock (_lock)
        {
            double[] part = [.. _wholeMs.Skip(_taken).Order()];
            _taken = _wholeMs.Count;
            return part;
        }
    }

    /// <summary>All of them, shortest first, in milliseconds.</summary>
    public double[] Whole()
    {
        lock (_lock)
        {
            return [.. _wholeMs.Order()];
        }
    }

    /// <summary>The latency that a part of the calls stays within; zero without calls.</summary>
    /// <param name="sortedMs">Shortest first.</param>
    /// <param name="part">From 0 to 1.</param>
    public static double At(double[] sortedMs, double part) =>
        sortedMs.Length == 0 ? 0 : sortedMs[Math.Min(sortedMs.Length - 1, (int)(part * sortedMs.Length))];
}
