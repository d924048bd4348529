namespace Flushback.Cli.Regression.Baselines;

/// <summary>How far a number may be off its baseline where nobody says otherwise.</summary>
/// <remarks>
/// The service gives the same bytes on the same machine; these leave room for another processor's last digits, and are
/// far below what a dial, a protractor or a spring balance shows.
/// </remarks>
internal static class Allowances
{
    /// <summary>The unit under which the outlines' own allowance is named, in millimetres.</summary>
    public const string Outline = "outline";

    /// <summary>By unit.</summary>
    public static IReadOnlyDictionary<string, double> Usual { get; } =
        new Dictionary<string, double>
        {
            ["mm"] = 0.0005,
            ["deg"] = 0.01,
            ["N"] = 0.05,
            ["Nmm"] = 1,
            ["MPa"] = 1,
            ["N/mm"] = 0.5,
            [Outline] = 0.001,
        };
}
