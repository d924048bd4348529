using System.Buffers.Binary;
using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace Flushback.Dxf.Tags;

/// <summary>The groups of a whole file, with the bytes they point into.</summary>
internal sealed record TagFile(ReadOnlyMemory<byte> Bytes, IReadOnlyList<DxfTag> Tags, TagForm Form)
{
    /// <summary>How text values are spelled; chosen from the header, Windows Latin until then.</summary>
    public Encoding Encoding { get; init; } = Encoding.Latin1;

    /// <summary>True when the last group is the EOF mark.</summary>
    public bool EndsWithMark { get; init; }

    /// <summary>True when bytes other than white space follow the EOF mark.</summary>
    public bool HasTrailingBytes { get; init; }

    /// <summary>Line (or byte offset) at which reading stopped.</summary>
    public int LastLine { get; init; }

    public bool IsBinary => Form.IsBinary;

    /// <summary>A place in the file as a sentence names it: a line of a text file, a byte of a binary one.</summary>
    public string Place(int lineOrByte) => $"{Form.PlaceWord} {Wording.Whole(lineOrByte)}";

    /// <summary>The value's raw bytes, without surrounding blanks in a text file.</summary>
    public ReadOnlySpan<byte> Raw(in DxfTag tag)
    {
        ReadOnlySpan<byte> value = Bytes.Span.Slice(tag.Start, tag.Length);
        return IsBinary ? value : value.Trim(" \t"u8);
    }

    /// <summary>The offset past the last byte of a group, its line ending or closing zero with it.</summary>
    public int EndOf(in DxfTag tag)
    {
        int end = tag.Start + tag.Length;
        return !IsBinary ? end + AsciiTagReader.LengthOfLineEnd(Bytes.Span[end..])
            : GroupTypes.Of(tag.Code) == GroupType.Text ? end + 1
            : end;
    }

    /// <summary>True when the value is this word, compared without regard to case.</summary>
    public bool Is(in DxfTag tag, ReadOnlySpan<byte> word) => Ascii.EqualsIgnoreCase(Raw(tag), word);

    /// <summary>The value as text.</summary>
    public string Text(in DxfTag tag) => DxfText.Decode(Raw(tag), Encoding);

    /// <summary>The value as a finite number; false when it is anything else.</summary>
    public bool TryNumber(in DxfTag tag, out double value)
    {
        if (IsBinary)
        {
            ReadOnlySpan<byte> raw = Bytes.Span.Slice(tag.Start, tag.Length);
            value = raw.Length == 8 ? BinaryPrimitives.ReadDoubleLittleEndian(raw) : IntegerOf(raw);
            return double.IsFinite(value);
        }

        return double.TryParse(Raw(tag), NumberStyles.Float, CultureInfo.InvariantCulture, out value)
            && double.IsFinite(value);
    }

    /// <summary>The value as a whole number; false when it is anything else.</summary>
    public bool TryInteger(in DxfTag tag, out int value)
    {
        if (IsBinary)
        {
            long wide = IntegerOf(Bytes.Span.Slice(tag.Start, tag.Length));
            value = (int)Math.Clamp(wide, int.MinValue, int.MaxValue);
            return value == wide;
        }

        ReadOnlySpan<byte> raw = Raw(tag);
        return Utf8Parser.TryParse(raw, out value, out int used) && used == raw.Length;
    }

    private static long IntegerOf(ReadOnlySpan<byte> raw) =>
        raw.Length switch
        {
            1 => raw[0],
            2 => BinaryPrimitives.ReadInt16LittleEndian(raw),
            4 => BinaryPrimitives.ReadInt32LittleEndian(raw),
            8 => BinaryPrimitives.ReadInt64LittleEndian(raw),
            _ => 0,
        };
}
