using System.Globalization;
using System.Text;

namespace Flushback.Dxf.Tags;

/// <summary>Text values: code pages, UTF-8 and the format's own escapes.</summary>
internal static class DxfText
{
    /// <summary>Strict UTF-8, to find out whether bytes are UTF-8 at all.</summary>
    private static readonly UTF8Encoding StrictUtf8 = new(
        encoderShouldEmitUTF8Identifier: false,
        throwOnInvalidBytes: true
    );

    /// <summary>The format allows names of 255 letters; what is longer is cut.</summary>
    private const int LongestName = 255;

    /// <summary>The encoding of a file from its version mark and the name of its code page.</summary>
    /// <remarks>
    /// UTF-8 from AC1021 on and wherever a byte order mark says so; before that the code page, Windows Latin (1252) by
    /// default. A code page nobody knows is read as 1252: group codes and numbers do not depend on it.
    /// </remarks>
    public static Encoding Choose(string versionMark, string codePage, bool hasUtf8Mark)
    {
        bool isUtf8Version = versionMark.Length == 6 && string.CompareOrdinal(versionMark, "AC1021") >= 0;
        if (hasUtf8Mark || isUtf8Version)
        {
            return Encoding.UTF8;
        }

        return CodePagesEncodingProvider.Instance.GetEncoding(CodePageNumber(codePage))
            ?? CodePagesEncodingProvider.Instance.GetEncoding(1252)
            ?? Encoding.Latin1;
    }

    /// <summary>The text of a name or value, with <c>\U+nnnn</c> escapes resolved and control characters replaced.</summary>
    public static string Decode(ReadOnlySpan<byte> raw, Encoding encoding)
    {
        ReadOnlySpan<byte> read = raw[..Math.Min(raw.Length, 4 * LongestName)];
        string text = Ascii.IsValid(read) ? Encoding.ASCII.GetString(read) : DecodeWide(read, encoding);
        if (text.Contains(@"\U+", StringComparison.OrdinalIgnoreCase))
        {
            text = Unescape(text);
        }

        return text.Length > LongestName || text.Any(char.IsControl) ? Printable(text) : text;
    }

    // Names are told in sentences, so what no name may hold does not get there.
    private static string Printable(string text) =>
        string.Concat(text.Take(LongestName).Select(letter => char.IsControl(letter) ? '?' : letter));

    /// <summary>Text made fit for a file: control characters become spaces, what the encoding lacks becomes an escape.</summary>
    public static string Escape(string text, bool isUtf8)
    {
        StringBuilder escaped = new(text.Length);
        foreach (char letter in text)
        {
            if (char.IsControl(letter))
            {
                escaped.Append(' ');
            }
            else if (letter < 128 || isUtf8)
            {
                escaped.Append(letter);
            }
            else
            {
                escaped.Append(CultureInfo.InvariantCulture, $@"\U+{(int)letter:X4}");
            }
        }

        return escaped.ToString();
    }

    private static string DecodeWide(ReadOnlySpan<byte> raw, Encoding encoding)
    {
        if (encoding is not UTF8Encoding)
        {
            return encoding.GetString(raw);
        }

        try
        {
            return StrictUtf8.GetString(raw);
        }
        catch (DecoderFallbackException)
        {
            // A newer file that an older program wrote in its own code page: a readable name beats question marks.
            return Encoding.Latin1.GetString(raw);
        }
    }

    private static int CodePageNumber(string name)
    {
        // ANSI_1252, ANSI_932, DOS850, ISO8859-1 and so on: the digits at the end are the number.
        if (name.StartsWith("ISO8859", StringComparison.OrdinalIgnoreCase))
        {
            return 28590 + TrailingNumber(name);
        }

        return name.Equals("UTF-8", StringComparison.OrdinalIgnoreCase) ? 65001 : TrailingNumber(name);
    }

    private static int TrailingNumber(string name)
    {
        int start = name.Length;
        while (start > 0 && char.IsAsciiDigit(name[start - 1]))
        {
            start--;
        }

        return
            int.TryParse(name.AsSpan(start), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && number <= 65535
            ? number
            : 1252;
    }

    private static string Unescape(string text)
    {
        StringBuilder plain = new(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (
                i + 7 <= text.Length
                && text.AsSpan(i, 3).Equals(@"\U+", StringComparison.OrdinalIgnoreCase)
                && ushort.TryParse(
                    text.AsSpan(i + 3, 4),
                    NumberStyles.AllowHexSpecifier,
                    CultureInfo.InvariantCulture,
                    out ushort code
                )
            )
            {
                plain.Append((char)code);
                i += 6;
            }
            else
            {
                plain.Append(text[i]);
            }
        }

        return plain.ToString();
    }
}
