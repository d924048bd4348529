namespace Flushback.Dxf.Writing;

/// <summary>What a version of the format wants around an entity.</summary>
/// <param name="HasMarkers">Subclass markers (group 100), from R13 on.</param>
/// <param name="HasOwners">Owner handles (group 330), from 2000 on.</param>
/// <param name="HasLightPolylines">LWPOLYLINE, from R14 on.</param>
/// <param name="IsUtf8">Text in UTF-8, from 2007 on.</param>
internal readonly record struct Dialect(bool HasMarkers, bool HasOwners, bool HasLightPolylines, bool IsUtf8)
{
    /// <summary>The dialect of a version mark; a file without one is taken for R12, which every reader takes.</summary>
    public static Dialect Of(string versionMark) =>
        new(
            HasMarkers: IsAtLeast(versionMark, "AC1012"),
            HasOwners: IsAtLeast(versionMark, "AC1015"),
            HasLightPolylines: IsAtLeast(versionMark, "AC1014"),
            IsUtf8: IsAtLeast(versionMark, "AC1021")
        );

    private static bool IsAtLeast(string mark, string first) =>
        mark.Length == first.Length && string.CompareOrdinal(mark, first) >= 0;
}

/// <summary>Hands out handles that nothing else has.</summary>
/// <param name="next">The first free handle.</param>
internal sealed class HandleSource(ulong next)
{
    /// <summary>The handle that will be given next: the seed to write into the header at the end.</summary>
    public string Seed => next.ToString("X", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A new handle.</summary>
    public string Next()
    {
        string handle = Seed;
        next++;
        return handle;
    }
}
