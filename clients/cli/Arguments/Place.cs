using System.Diagnostics.CodeAnalysis;
using Flushback.Contract.V1;

namespace Flushback.Cli.Arguments;

/// <summary>Places in the drawing on the command line, such as <c>12.5,-3mm</c> or <c>0.5,1.25in</c>.</summary>
internal static class Place
{
    /// <summary>What is wrong with a text that is no place.</summary>
    public static string Complaint(string text) =>
        $"'{text}' is not a place: write x,y and the unit, such as 12.5,-3mm or 0.5,1.25in.";

    /// <summary>Reads a place; the unit at the end holds for both numbers.</summary>
    /// <param name="text">Two numbers and a unit.</param>
    /// <param name="place">The place in millimetres.</param>
    /// <returns>False when the text is no place.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out Point? place)
    {
        (string numbers, double unitMm) = Length.SplitUnit(text);
        string[] parts = numbers.Split(',');
        place =
            unitMm > 0
            && parts.Length == 2
            && Number.TryParse(parts[0], out double x)
            && Number.TryParse(parts[1], out double y)
                ? new Point { XMm = x * unitMm, YMm = y * unitMm }
                : null;
        return place is not null;
    }
}
