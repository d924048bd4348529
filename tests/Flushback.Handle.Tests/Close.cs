namespace Flushback.Handle.Tests;

/// <summary>Nearness relative to what is expected.</summary>
internal static class Close
{
    public static void To(double expected, double actual, double relative) =>
        Assert.True(
            Math.Abs(actual - expected) <= relative * Math.Abs(expected),
            FormattableString.Invariant(
                $"Expected {expected:R}, found {actual:R}: off by {(actual / expected) - 1:E2}."
            )
        );
}
