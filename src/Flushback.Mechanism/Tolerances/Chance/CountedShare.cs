namespace Flushback.Mechanism.Tolerances.Chance;

/// <summary>A share found by counting, and between which limits the true one lies with 95 percent confidence.</summary>
/// <remarks>
/// Score interval of E. B. Wilson, "Probable inference, the law of succession, and statistical inference", Journal of the
/// American Statistical Association 22 (1927): good for shares near 0 and 1 too.
/// </remarks>
/// <param name="Share">The share counted, from 0 to 1.</param>
/// <param name="Low">Lower limit.</param>
/// <param name="High">Upper limit.</param>
public readonly record struct CountedShare(double Share, double Low, double High)
{
    // 97.5th percentile of the normal distribution.
    private const double Quantile = 1.959963984540054;

    /// <summary>The share of a count.</summary>
    /// <param name="count">How many are.</param>
    /// <param name="of">Out of how many, at least one.</param>
    public static CountedShare Of(int count, int of)
    {
        double share = (double)count / of;
        double spread = Quantile * Quantile / of;
        double middle = share + (spread / 2);
        double half = Math.Sqrt(spread * ((share * (1 - share)) + (spread / 4)));
        return new CountedShare(
            share,
            Math.Max(0, (middle - half) / (1 + spread)),
            Math.Min(1, (middle + half) / (1 + spread))
        );
    }
}
