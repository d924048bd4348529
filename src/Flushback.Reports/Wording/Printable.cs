using System.Globalization;
using System.Text;

namespace Flushback.Reports.Wording;

/// <summary>Takes out what does not print: a name may come from anywhere, and a terminal obeys some characters.</summary>
internal static class Printable
{
    public static string Of(string text) =>
        string.Concat(text.EnumerateRunes().Where(Prints).Select(rune => rune.ToString())).Trim();

    /// <summary>The text, or another where nothing of it prints.</summary>
    public static string Or(string text, string otherwise) =>
        Of(text) is { Length: > 0 } printable ? printable : otherwise;

    private static bool Prints(Rune rune) =>
        Rune.GetUnicodeCategory(rune)
            is not (UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator)
                and not UnicodeCategory.ParagraphSeparator;
}
