using System.Buffers;
using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Writing;

/// <summary>Writes groups in the form of a file: text with its line ending, or binary with its width of codes.</summary>
/// <param name="form">How groups are laid down.</param>
/// <param name="isUtf8">True when text may leave ASCII; otherwise it is escaped.</param>
internal sealed class TagWriter(TagForm form, bool isUtf8)
{
    private readonly ArrayBufferWriter<byte> _bytes = new();

    /// <summary>A group with a text value.</summary>
    public TagWriter Text(int code, string value) =>
        Spelled(code, Encoding.UTF8.GetBytes(DxfText.Escape(value, isUtf8)));

    /// <summary>A group with a text value spelled in the bytes of the file.</summary>
    public TagWriter Spelled(int code, ReadOnlySpan<byte> value)
    {
        if (form.IsBinary)
        {
            Code(code);
            _bytes.Write(value);
            _bytes.Write<byte>([0]);
            return this;
        }

        CodeLine(code);
        _bytes.Write(value);
        Encoding.UTF8.GetBytes(form.LineEnd, _bytes);
        return this;
    }

    /// <summary>Whole groups as they stand in the file.</summary>
    public TagWriter Copied(ReadOnlySpan<byte> groups)
    {
        _bytes.Write(groups);
        return this;
    }

    /// <summary>A group with a whole number, in two or four bytes as its code wants.</summary>
    public TagWriter Whole(int code, int value)
    {
        if (!form.IsBinary)
        {
            return Lines(code, value.ToString(CultureInfo.InvariantCulture));
        }

        Code(code);
        int width = GroupTypes.Of(code) == GroupType.Whole ? 4 : 2;
        Span<byte> raw = stackalloc byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(raw, value);
        _bytes.Write(raw[..width]);
        return this;
    }

    /// <summary>A group with a number; in text, in the fewest digits that read back as the same double.</summary>
    public TagWriter Number(int code, double value)
    {
        if (!form.IsBinary)
        {
            string digits = value.ToString("R", CultureInfo.InvariantCulture);

            // Some readers take a number without a point for a whole one.
            bool looksWhole = digits.AsSpan().IndexOfAny('.', 'E') < 0;
            return Lines(code, looksWhole ? digits + ".0" : digits);
        }

        Code(code);
        BinaryPrimitives.WriteDoubleLittleEndian(_bytes.GetSpan(8), value);
        _bytes.Advance(8);
        return this;
    }

    /// <summary>Three groups: x, y and z.</summary>
    public TagWriter Place(int code, double x, double y, double z = 0) =>
        Number(code, x).Number(code + 10, y).Number(code + 20, z);

    /// <summary>What was written so far.</summary>
    public byte[] ToBytes() => _bytes.WrittenSpan.ToArray();

    private TagWriter Lines(int code, string value)
    {
        CodeLine(code);
        Encoding.UTF8.GetBytes(value, _bytes);
        Encoding.UTF8.GetBytes(form.LineEnd, _bytes);
        return this;
    }

    private void CodeLine(int code)
    {
        Encoding.UTF8.GetBytes(code.ToString(CultureInfo.InvariantCulture).PadLeft(3), _bytes);
        Encoding.UTF8.GetBytes(form.LineEnd, _bytes);
    }

    private void Code(int code)
    {
        Span<byte> raw = stackalloc byte[2];
        BinaryPrimitives.WriteInt16LittleEndian(raw, (short)code);

        // No group we write has a code of 255 or more in a file of one-byte codes, which end with R12.
        _bytes.Write(form.HasWideCodes ? raw : raw[..1]);
    }
}
