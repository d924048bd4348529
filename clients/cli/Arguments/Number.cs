using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Flushback.Cli.Arguments;

/// <summary>Numbers on the command line: a decimal point, never a comma, whatever the machine's language.</summary>
internal static class Number
{
    /// <summary>What is wrong with a text that is no number.</summary>
    public static string Complaint(string text) => $"'{text}' is not a number: write it with a point, such as 0.25.";

    /// <summary>Reads a finite number.</summary>
    public static bool TryParse(string text, out double value) =>
        double.TryParse(
            text.Trim(),
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
            CultureInfo.InvariantCulture,
            out value
        ) && double.IsFinite(value);

    /// <inheritdoc cref="TryParse(string, out double)"/>
    public static bool TryParse(string text, [NotNullWhen(true)] out double? value)
    {
        bool isNumber = TryParse(text, out double number);
        value = isNumber ? number : null;
        return isNumber;
    }
}
