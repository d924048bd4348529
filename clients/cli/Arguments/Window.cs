using System.Diagnostics.CodeAnalysis;
using Flushback.Contract.V1;

namespace Flushback.Cli.Arguments;

/// <summary>A least and a most on the command line, such as <c>1mm,3mm</c>.</summary>
internal static class Window
{
    /// <summary>What is wrong with a text that is no window.</summary>
    public static string Complaint(string text) =>
        $"'{text}' is not a least and a most: write two lengths with a comma between, the smaller first, such as 1mm,3mm.";

    /// <summary>Reads a window.</summary>
    public static bool TryParse(string text, [NotNullWhen(true)] out LengthWindow? window)
    {
        string[] parts = text.Split(',');
        window =
            parts.Length == 2
            && Length.TryParse(parts[0], out double least)
            && Length.TryParse(parts[1], out double most)
            && least <= most
                ? new LengthWindow { LeastMm = least, MostMm = most }
                : null;
        return window is not null;
    }
}
