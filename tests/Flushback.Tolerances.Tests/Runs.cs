using System.Globalization;

namespace Flushback.Tolerances.Tests;

/// <summary>How many random knives a property is held to.</summary>
internal static class Runs
{
    /// <summary>So many, or as many times more as FLUSHBACK_RUNS says.</summary>
    public static int Few(int count) =>
        int.TryParse(
            Environment.GetEnvironmentVariable("FLUSHBACK_RUNS"),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out int times
        )
            ? count * times
            : count;
}
