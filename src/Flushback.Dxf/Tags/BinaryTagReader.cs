using System.Buffers.Binary;

namespace Flushback.Dxf.Tags;

/// <summary>Splits a binary DXF into groups: a code of one or two bytes, and a value whose length the code decides.</summary>
internal ref struct BinaryTagReader
{
    /// <summary>In files with codes of one byte: the mark of a code of two bytes that follows.</summary>
    private const byte LongCodeMark = 255;

    private readonly ReadOnlyMemory<byte> _memory;
    private readonly ReadOnlySpan<byte> _bytes;
    private readonly bool _hasWideCodes;
    private int _position;

    private BinaryTagReader(ReadOnlyMemory<byte> memory, int start)
    {
        _memory = memory;
        _bytes = memory.Span;
        _position = start;

        // The first group is 0 SECTION: in two bytes the code is followed by a zero, in one byte by the word.
        _hasWideCodes = _bytes.Length > start + 1 && _bytes[start + 1] == 0;
    }

    /// <summary>Reads all groups up to the EOF mark or the end of the bytes.</summary>
    /// <param name="memory">The whole file.</param>
    /// <param name="start">Where to begin: past the mark of the form.</param>
    /// <param name="ct">Stops the reading.</param>
    public static TagScan Read(ReadOnlyMemory<byte> memory, int start, CancellationToken ct) =>
        new BinaryTagReader(memory, start).ReadAll(ct);

    private TagScan ReadAll(CancellationToken ct)
    {
        List<DxfTag> tags = new(Math.Max(16, _bytes.Length / 10));
        bool ended = false;
        while (!ended && TryCode(out int at, out int code))
        {
            if ((tags.Count & 0xFFFF) == 0)
            {
                ct.ThrowIfCancellationRequested();
            }

            if (GroupTypes.Of(code) is not { } type)
            {
                return TagScan.Failed(
                    DxfIssueCodes.Structure,
                    $"The binary file holds group code {Wording.Whole(code)} at byte {Wording.Whole(at)}, which does not exist: "
                        + "it is damaged there; export the drawing again.",
                    at
                );
            }

            if (!TryValue(type, out int start, out int length))
            {
                break;
            }

            if (code != 999)
            {
                tags.Add(new DxfTag(code, start, length, at, at));
                ended = code == 0 && _bytes.Slice(start, length).SequenceEqual("EOF"u8);
            }
        }

        TagFile file = new(_memory, tags, TagForm.Binary(_hasWideCodes))
        {
            EndsWithMark = ended,
            HasTrailingBytes = ended && _bytes[_position..].IndexOfAnyExcept((byte)0) >= 0,
            LastLine = _position,
        };
        return new TagScan(file, null);
    }

    private bool TryCode(out int at, out int code)
    {
        at = _position;
        code = 0;
        bool isLong = _hasWideCodes;
        if (!_hasWideCodes && _position < _bytes.Length)
        {
            code = _bytes[_position++];
            isLong = code == LongCodeMark;
        }

        if (!isLong)
        {
            return at < _bytes.Length;
        }

        if (_position + 2 > _bytes.Length)
        {
            return false;
        }

        code = BinaryPrimitives.ReadInt16LittleEndian(_bytes[_position..]);
        _position += 2;
        return true;
    }

    private bool TryValue(GroupType type, out int start, out int length)
    {
        start = _position;
        int end = type == GroupType.Text ? _bytes[_position..].IndexOf((byte)0) : 0;
        length = type switch
        {
            GroupType.Text => end,
            GroupType.Number or GroupType.Long => 8,
            GroupType.Whole => 4,
            GroupType.Short => 2,
            GroupType.Chunk => _position < _bytes.Length ? 1 + _bytes[_position] : 1,
            _ => 1,
        };
        if (length < 0 || start + length > _bytes.Length)
        {
            return false;
        }

        _position = start + length + (type == GroupType.Text ? 1 : 0);
        return true;
    }
}
