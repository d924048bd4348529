using System.Diagnostics.CodeAnalysis;

namespace Flushback.Dxf.Tags;

/// <summary>Names met over and over (entity types, layers), each decoded once.</summary>
internal sealed class NamePool(TagFile file)
{
    private readonly Dictionary<byte[], string> _names = new(ByBytes.Instance);

    /// <summary>The value of a group as text.</summary>
    public string NameOf(in DxfTag tag)
    {
        ReadOnlySpan<byte> raw = file.Raw(tag);
        var lookup = _names.GetAlternateLookup<ReadOnlySpan<byte>>();
        if (!lookup.TryGetValue(raw, out string? name))
        {
            name = DxfText.Decode(raw, file.Encoding);
            lookup[raw] = name;
        }

        return name;
    }

    private sealed class ByBytes : IEqualityComparer<byte[]>, IAlternateEqualityComparer<ReadOnlySpan<byte>, byte[]>
    {
        public static readonly ByBytes Instance = new();

        public byte[] Create(ReadOnlySpan<byte> alternate) => alternate.ToArray();

        public bool Equals(ReadOnlySpan<byte> alternate, byte[] other) => alternate.SequenceEqual(other);

        public bool Equals(byte[]? x, byte[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(ReadOnlySpan<byte> alternate)
        {
            HashCode hash = default;
            hash.AddBytes(alternate);
            return hash.ToHashCode();
        }

        public int GetHashCode([DisallowNull] byte[] obj) => GetHashCode(obj.AsSpan());
    }
}
