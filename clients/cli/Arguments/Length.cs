using System.Diagnostics.CodeAnalysis;

namespace Flushback.Cli.Arguments;

/// <summary>Lengths on the command line: a number and its unit, such as <c>+0.005in</c>, <c>3/32in</c>, <c>0.13mm</c> or <c>5thou</c>.</summary>
internal static class Length
{
    private const double InchMm = 25.4;

    private static readonly (string Suffix, double Mm)[] Units = [("mm", 1), ("thou", InchMm / 1000), ("in", InchMm)];

    /// <summary>What is wrong with a text that is no length.</summary>
    public static string Complaint(string text) =>
        $"'{text}' is not a length: write a number and its unit, such as 0.13mm, 0.005in, 3/32in or 5thou.";

    /// <summary>Reads a length.</summary>
    /// <param name="text">Number and unit.</param>
    /// <param name="mm">The length in millimetres.</param>
    /// <returns>False when the text is no length; a bare number is none, except zero.</returns>
    public static bool TryParse(string text, out double mm)
    {
        (string number, double unitMm) = SplitUnit(text);
        bool isNumber = TryParseNumber(number, out double value);
        mm = value * unitMm;
        return isNumber && double.IsFinite(mm) && (value == 0 || unitMm > 0);
    }

    /// <inheritdoc cref="TryParse(string, out double)"/>
    public static bool TryParse(string text, [NotNullWhen(true)] out double? mm)
    {
        bool isLength = TryParse(text, out double length);
        mm = isLength ? length : null;
        return isLength;
    }

    // A number, or a fraction as on an inch rule.
    private static bool TryParseNumber(string text, out double value)
    {
        string[] parts = text.Split('/');
        double over = 1;
        bool isNumber =
            Number.TryParse(parts[0], out value)
            && (parts.Length == 1 || (parts.Length == 2 && Number.TryParse(parts[1], out over) && over > 0));
        value /= over;
        return isNumber && double.IsFinite(value);
    }

    /// <summary>A text without the unit at its end, and that unit in millimetres; 0 when it has none.</summary>
    public static (string Number, double UnitMm) SplitUnit(string text)
    {
        foreach ((string suffix, double mm) in Units)
        {
            if (text.EndsWith(suffix, StringComparison.OrdinalIgnoreCase))
            {
                return (text[..^suffix.Length], mm);
            }
        }

        return (text, 0);
    }
}
