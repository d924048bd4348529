using System.Globalization;
using System.Text;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Writing;

/// <summary>Writes groups in the form of a file: text for now, with its line ending.</summary>
/// <param name="form">How groups are laid down.</param>
/// <param name="isUtf8">True when text may leave ASCII; otherwise it is escaped.</param>
internal sealed class TagWriter(TagForm form, bool isUtf8)
{
    private readonly StringBuilder text = new();

    /// <summary>A group with a text value.</summary>
    public TagWriter Text(int code, string value)
    {
        Line(code.ToString(CultureInfo.InvariantCulture).PadLeft(3));
        Line(DxfText.Escape(value, isUtf8));
        return this;
    }

    /// <summary>A group with a whole number.</summary>
    public TagWriter Whole(int code, int value) => Text(code, value.ToString(CultureInfo.InvariantCulture));

    /// <summary>A group with a number, in the fewest digits that read back as the same double.</summary>
    public TagWriter Number(int code, double value)
    {
        string digits = value.ToString("R", CultureInfo.InvariantCulture);

        // Some readers take a number without a point for a whole one.
        bool looksWhole = digits.AsSpan().IndexOfAny('.', 'E') < 0;
        return Text(code, looksWhole ? digits + ".0" : digits);
    }

    /// <summary>Three groups: x, y and a z of nothing.</summary>
    public TagWriter Place(int code, double x, double y) => Number(code, x).Number(code + 10, y).Number(code + 20, 0);

    /// <summary>What was written so far.</summary>
    public byte[] ToBytes() => Encoding.UTF8.GetBytes(text.ToString());

    private void Line(string line) => text.Append(line).Append(form.LineEnd);
}
