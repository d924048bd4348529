namespace Flushback.Cli.Regression.Baselines;

/// <summary>Numbers as a baseline keeps them.</summary>
internal static class Rounded
{
    /// <summary>To so many decimals, without a minus before a zero: it would come and go with the last digit.</summary>
    public static double To(double value, int decimals) =>
        Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0;
}
