namespace Flushback.Reports.Pictures;

/// <summary>Ticks at round numbers along an axis.</summary>
internal static class RoundTicks
{
    private static readonly double[] RoundFactors = [1, 2, 5, 10];

    /// <summary>1, 2 or 5 times a power of ten, no smaller than asked for.</summary>
    public static double Step(double least)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(least)));
        return RoundFactors.First(factor => factor * power >= least * (1 - 1e-12)) * power;
    }

    /// <summary>All whole multiples of a step from one number to another.</summary>
    public static IEnumerable<double> Between(double low, double high, double step)
    {
        // Counted, not summed, so that a tick at zero is zero.
        for (double count = Math.Ceiling((low / step) - 1e-9); count * step <= high + (1e-9 * step); count++)
        {
            yield return count * step;
        }
    }
}
