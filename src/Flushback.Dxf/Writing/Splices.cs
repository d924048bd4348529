using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Writing;

/// <summary>Changes to a file at a few places; every other byte is copied.</summary>
internal sealed class Splices(TagFile file)
{
    private readonly List<(int At, int Removed, byte[] Added)> _changes = [];

    /// <summary>Puts groups in front of a group.</summary>
    public void InsertBefore(in DxfTag tag, byte[] added) => _changes.Add((tag.At, 0, added));

    /// <summary>Takes out the bytes between two offsets.</summary>
    public void Remove(int from, int to) => _changes.Add((from, to - from, []));

    /// <summary>Puts a new text value in place of an old one.</summary>
    public void ReplaceText(in DxfTag tag, string value) =>
        _changes.Add((tag.Start, tag.Length, Encoding.ASCII.GetBytes(value)));

    /// <summary>Raises a whole number in the file; one that is damaged stays.</summary>
    public void RaiseCount(in DxfTag tag, int by)
    {
        if (!file.TryInteger(tag, out int count))
        {
            return;
        }

        if (file.IsBinary)
        {
            byte[] raw = new byte[2];
            BinaryPrimitives.WriteInt16LittleEndian(raw, (short)Math.Min(count + by, short.MaxValue));
            _changes.Add((tag.Start, tag.Length, raw));
        }
        else
        {
            ReplaceText(tag, (count + by).ToString(CultureInfo.InvariantCulture));
        }
    }

    // At one place what is put in comes first, in the order it was asked for.
    private IEnumerable<(int At, int Removed, byte[] Added)> InOrder() =>
        _changes.OrderBy(change => change.At).ThenBy(change => change.Removed);

    /// <summary>The changed file.</summary>
    public byte[] Apply()
    {
        ReadOnlySpan<byte> bytes = file.Bytes.Span;
        using MemoryStream changed = new(bytes.Length + _changes.Sum(change => change.Added.Length));
        int from = 0;
        foreach ((int at, int removed, byte[] added) in InOrder())
        {
            changed.Write(bytes[from..at]);
            changed.Write(added);
            from = at + removed;
        }

        changed.Write(bytes[from..]);
        return changed.ToArray();
    }
}
