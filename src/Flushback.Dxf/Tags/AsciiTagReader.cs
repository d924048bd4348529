using System.Buffers;
using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace Flushback.Dxf.Tags;

/// <summary>Splits a text DXF into groups: a line with the code, a line with the value.</summary>
/// <remarks>
/// Lines may end in CR LF, LF or CR; codes may be padded with blanks; comments (code 999) are passed over. Nothing is
/// copied: a group points into the bytes.
/// </remarks>
internal ref struct AsciiTagReader
{
    /// <summary>What may follow the EOF mark: white space, padding and the end mark of old systems.</summary>
    private static readonly SearchValues<byte> Blanks = SearchValues.Create(" \t\r\n\0\x1A"u8);

    private readonly ReadOnlyMemory<byte> _memory;
    private readonly ReadOnlySpan<byte> _bytes;
    private int _position;
    private int _line;

    private AsciiTagReader(ReadOnlyMemory<byte> memory, int start)
    {
        _memory = memory;
        _bytes = memory.Span;
        _position = start;
    }

    /// <summary>Reads all groups up to the EOF mark or the end of the bytes.</summary>
    /// <param name="memory">The whole file.</param>
    /// <param name="start">Where to begin: past a byte order mark.</param>
    /// <param name="ct">Stops the reading.</param>
    public static TagScan Read(ReadOnlyMemory<byte> memory, int start, CancellationToken ct) =>
        new AsciiTagReader(memory, start).ReadAll(ct);

    private TagScan ReadAll(CancellationToken ct)
    {
        List<DxfTag> tags = new(Math.Max(16, _bytes.Length / 12));
        bool ended = false;
        while (!ended && TryLine(out int codeAt, out int codeLength))
        {
            if ((tags.Count & 0xFFFF) == 0)
            {
                ct.ThrowIfCancellationRequested();
            }

            ReadOnlySpan<byte> written = _bytes.Slice(codeAt, codeLength).Trim(" \t"u8);
            if (!Utf8Parser.TryParse(written, out int code, out int used) || used != written.Length)
            {
                if (written.IsEmpty && IsBlankFrom(_position))
                {
                    break;
                }

                return NoCode(written, tags.Count);
            }

            int codeLine = _line;
            if (!TryLine(out int valueAt, out int valueLength))
            {
                // A code without its value: the file is cut short, which the structure check words.
                break;
            }

            if (code == 999)
            {
                continue;
            }

            tags.Add(new DxfTag(code, valueAt, valueLength, codeAt, codeLine));
            ended = code == 0 && _bytes.Slice(valueAt, valueLength).Trim(" \t"u8).SequenceEqual("EOF"u8);
        }

        TagFile file = new(_memory, tags, TagForm.Ascii(LineEndOf(_bytes)))
        {
            EndsWithMark = ended,
            HasTrailingBytes = ended && !IsBlankFrom(_position),
            LastLine = _line,
        };
        return new TagScan(file, null);
    }

    private bool TryLine(out int start, out int length)
    {
        start = _position;
        length = 0;
        if (_position >= _bytes.Length)
        {
            return false;
        }

        _line++;
        int end = _bytes[_position..].IndexOfAny((byte)'\r', (byte)'\n');
        if (end < 0)
        {
            length = _bytes.Length - _position;
            _position = _bytes.Length;
            return true;
        }

        length = end;
        _position += end + LengthOfLineEnd(_bytes[(_position + end)..]);
        return true;
    }

    /// <summary>Bytes of the line ending that some bytes begin with; zero when they begin with none.</summary>
    public static int LengthOfLineEnd(ReadOnlySpan<byte> bytes)
    {
        // CR LF, or CR CR LF as a file gets it that was sent as text twice.
        return bytes.StartsWith("\r\r\n"u8) ? 3
            : bytes.StartsWith("\r\n"u8) ? 2
            : bytes.StartsWith("\r"u8) || bytes.StartsWith("\n"u8) ? 1
            : 0;
    }

    private readonly bool IsBlankFrom(int start) => _bytes[start..].IndexOfAnyExcept(Blanks) < 0;

    private readonly TagScan NoCode(ReadOnlySpan<byte> written, int tagsSoFar)
    {
        string shown = Encoding.Latin1.GetString(written[..Math.Min(written.Length, 40)]);
        if (tagsSoFar == 0)
        {
            return TagScan.Failed(
                DxfIssueCodes.NotDxf,
                $"This is no DXF file: line {Number(_line)} should hold a group code, a whole number, and holds "
                    + $"'{Printable(shown)}'; export the drawing as DXF from the program it was drawn in.",
                _line
            );
        }

        return TagScan.Failed(
            DxfIssueCodes.Structure,
            $"Line {Number(_line)} should hold a group code, a whole number, and holds '{Printable(shown)}': lines are "
                + "missing or were added above it; save the drawing as DXF again.",
            _line
        );
    }

    private static string Printable(string text) =>
        string.Create(
            text.Length,
            text,
            (span, from) =>
            {
                for (int i = 0; i < span.Length; i++)
                {
                    span[i] = char.IsControl(from[i]) ? '?' : from[i];
                }
            }
        );

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string LineEndOf(ReadOnlySpan<byte> bytes)
    {
        int first = bytes.IndexOfAny((byte)'\r', (byte)'\n');
        if (first < 0 || bytes[first] == '\n')
        {
            return "\n";
        }

        return first + 1 < bytes.Length && bytes[first + 1] == '\n' ? "\r\n" : "\r";
    }
}
