namespace Flushback.Patterns.Fitting;

/// <summary>A demand on the changes, made straight about a trial: slope times change is at least the level.</summary>
/// <param name="Key">What demands it.</param>
/// <param name="Slope">By change of each lever; a lever that came into play later has none.</param>
/// <param name="Level">What the sum has to reach.</param>
internal sealed record Plane(string Key, double[] Slope, double Level)
{
    /// <summary>The demand turned round.</summary>
    public Plane Reversed => new(Key, [.. Slope.Select(slope => -slope)], -Level);

    /// <summary>The demand drawn back so far that changes which are known to be good miss it by a margin at most.</summary>
    public Plane Clearing(ReadOnlySpan<double> good, double margin) =>
        this with
        {
            Level = Math.Min(Level, Product(Slope, good) + (margin * Math.Sqrt(Slope.Sum(slope => slope * slope)))),
        };

    /// <summary>The demand so far as to be met by a share of the way from what changes give now.</summary>
    public Plane Partly(double share, ReadOnlySpan<double> now)
    {
        double missing = Level - Product(Slope, now);
        return missing > 0 ? this with { Level = Level - ((1 - share) * missing) } : this;
    }

    /// <summary>The demand that a measure comes down to zero, and a little below.</summary>
    /// <param name="key">What is measured.</param>
    /// <param name="measure">The measure at a trial.</param>
    /// <param name="slope">Its slope by each lever there.</param>
    /// <param name="at">The changes of that trial.</param>
    /// <param name="below">How far below zero.</param>
    public static Plane Lowering(string key, double measure, double[] slope, ReadOnlySpan<double> at, double below) =>
        new(key, [.. slope.Select(s => -s)], measure + below - Product(slope, at));

    /// <summary>Slope times change.</summary>
    public static double Product(ReadOnlySpan<double> slope, ReadOnlySpan<double> change)
    {
        double sum = 0;
        for (int i = 0; i < Math.Min(slope.Length, change.Length); i++)
        {
            sum += slope[i] * change[i];
        }

        return sum;
    }
}
