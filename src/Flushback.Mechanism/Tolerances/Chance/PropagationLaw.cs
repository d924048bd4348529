namespace Flushback.Mechanism.Tolerances.Chance;

/// <summary>The law of propagation of uncertainty for dimensions that vary by themselves.</summary>
internal static class PropagationLaw
{
    /// <summary>Limits of what is spread normally lie this many standard deviations from the middle.</summary>
    public const double NormalLimit = 3;

    /// <summary>Standard deviation of what is spread between two limits.</summary>
    /// <remarks>Uniform a / sqrt(3) (JCGM 100:2008, 4.3.7, equation 7); normal a / 3.</remarks>
    /// <param name="distribution">How it is spread.</param>
    /// <param name="halfWidth">Half the way between the limits.</param>
    public static double StandardDeviation(Distribution distribution, double halfWidth) =>
        distribution == Distribution.Normal ? halfWidth / NormalLimit : halfWidth / Math.Sqrt(3);

    /// <summary>Variance of what depends on dimensions: the sum of (derivative times standard deviation) squared.</summary>
    /// <remarks>JCGM 100:2008, 5.1.2, equation 10.</remarks>
    public static double Variance(ReadOnlySpan<double> derivatives, ReadOnlySpan<double> standardDeviations)
    {
        double variance = 0;
        for (int i = 0; i < derivatives.Length; i++)
        {
            double term = derivatives[i] * standardDeviations[i];
            variance += term * term;
        }

        return variance;
    }
}
