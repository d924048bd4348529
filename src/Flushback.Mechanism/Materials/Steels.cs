using System.Collections.Immutable;

namespace Flushback.Mechanism.Materials;

/// <summary>The steels known by their designation.</summary>
/// <remarks>
/// The modulus of steel hardly depends on alloy and not on heat treatment; what strength a steel reaches does, and is
/// estimated from the hardness asked for.
/// </remarks>
public static class Steels
{
    // Each read in a public copy, none in the document itself; a band about what was found is ours.
    private const string Carbon =
        "high-carbon spring steels 206 GPa (Analysis and Design of Machine Elements, table 14.2), 1095 207 GPa (30 Mpsi, a table of ferrous metals), flat springs 196 to 203 GPa (28.5 to 29.5 Mpsi, a spring handbook's table); the band is ours";

    private const string Tool =
        "tool steels in all conditions about 210 GPa (a metals handbook), O1, O2 and D2 190 to 210 GPa (data sheets); the band is ours";

    private const string Stainless =
        "types 410, 420 and 440A 200 GPa (29 Mpsi, a steelworks' data sheet), type 420 springs 29 Mpsi (a spring handbook's table); the band is ours";

    private const string HighCarbonStainless =
        "440C 200 GPa (data sheets) and 210 GPa (30.4 Mpsi, measured by vibration, another data sheet)";

    private const string Precipitation = "15-5PH (S15500) 196 GPa (data sheet); the band is ours";

    private static readonly ValueRange _carbon = new(202e3, 210e3);
    private static readonly ValueRange _tool = new(190e3, 215e3);
    private static readonly ValueRange _stainless = new(195e3, 205e3);
    private static readonly ValueRange _highCarbonStainless = new(200e3, 210e3);
    private static readonly ValueRange _precipitation = new(192e3, 200e3);

    /// <summary>All of them, in the order a maker would look them up.</summary>
    public static ImmutableArray<Steel> All { get; } =
    [
        new("1075", _carbon, Carbon),
        new("1095", _carbon, Carbon),
        new("5160", _carbon, Carbon),
        new("52100", _carbon, Carbon),
        new("O1", _tool, Tool),
        new("W2", _tool, Tool),
        new("D2", _tool, Tool),
        new("420", _stainless, Stainless),
        new("440C", _highCarbonStainless, HighCarbonStainless),
        new("15-5PH", _precipitation, Precipitation),
    ];

    /// <summary>What is taken for the spring when nothing is said.</summary>
    public static Steel DefaultSpring { get; } = Named("1095")!;

    /// <summary>A steel by its designation, without regard to case, spaces and a leading "AISI"; null when not known.</summary>
    public static Steel? Named(string designation)
    {
        string plain = Plain(designation);
        return All.FirstOrDefault(steel => Plain(steel.Designation) == plain);
    }

    private static string Plain(string designation)
    {
        string letters = string.Concat(designation.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant();
        return letters.StartsWith("AISI", StringComparison.Ordinal) ? letters[4..] : letters;
    }
}
