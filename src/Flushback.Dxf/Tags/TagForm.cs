namespace Flushback.Dxf.Tags;

/// <summary>How the groups of a file are laid down in bytes.</summary>
/// <param name="IsBinary">True for the binary form.</param>
/// <param name="HasWideCodes">In the binary form: group codes of two bytes (R13 and newer) and not of one.</param>
/// <param name="LineEnd">In the text form: the line ending to write with.</param>
internal readonly record struct TagForm(bool IsBinary, bool HasWideCodes, string LineEnd)
{
    /// <summary>What a place in the file is counted in.</summary>
    public string PlaceWord => IsBinary ? "byte" : "line";

    /// <summary>Text, with the given line ending.</summary>
    public static TagForm Ascii(string lineEnd) => new(IsBinary: false, HasWideCodes: false, lineEnd);

    /// <summary>Binary, with group codes of one or of two bytes.</summary>
    public static TagForm Binary(bool hasWideCodes) => new(IsBinary: true, hasWideCodes, "");
}
