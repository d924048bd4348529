using Flushback.Contract.V1;

namespace Flushback.Cli.Arguments;

/// <summary>Units of a drawing on the command line.</summary>
internal static class UnitName
{
    private static readonly Dictionary<string, LengthUnit> Units = new(StringComparer.OrdinalIgnoreCase)
    {
        ["mm"] = LengthUnit.Millimetre,
        ["cm"] = LengthUnit.Centimetre,
        ["m"] = LengthUnit.Metre,
        ["in"] = LengthUnit.Inch,
        ["thou"] = LengthUnit.Thou,
    };

    /// <summary>What is wrong with a text that is no unit.</summary>
    public static string Complaint(string text) => $"'{text}' is not a unit: write mm, cm, m, in or thou.";

    /// <summary>Reads a unit.</summary>
    public static bool TryParse(string text, out LengthUnit unit) => Units.TryGetValue(text, out unit);
}
