namespace Flushback.Mechanism.Plans.Solving;

/// <summary>How much of one change of a knife brings something about it to where it should be.</summary>
/// <remarks>By the secant method, with each amount tried on the knife itself: so it holds where the first order does not.</remarks>
internal static class ChangeAmount
{
    private const int MostSteps = 12;
    private const double FirstMm = 0.01;

    /// <summary>The amount, in millimetres; null when there is none, or the change cannot be made on the way to it.</summary>
    /// <param name="offNow">How far off it is without the change.</param>
    /// <param name="offWith">How far off it is with an amount of the change; null where that cannot be made. Asked last with the amount found.</param>
    /// <param name="enough">So little off is there.</param>
    /// <param name="mostMm">Most that may be changed.</param>
    public static double? Find(double offNow, Func<double, double?> offWith, double enough, double mostMm)
    {
        (double amount, double off) = (0, offNow);
        double next = FirstMm;
        for (int i = 0; i < MostSteps && next > 0 && next <= mostMm; i++)
        {
            if (offWith(next) is not { } offNext)
            {
                return null;
            }

            (double before, double offBefore) = (amount, off);
            (amount, off) = (next, offNext);
            if (Math.Abs(off) < enough)
            {
                return amount;
            }

            next = amount - (off * (amount - before) / (off - offBefore));
        }

        return null;
    }
}
