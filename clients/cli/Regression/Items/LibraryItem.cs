namespace Flushback.Cli.Regression.Items;

/// <summary>A file of a library that is checked.</summary>
/// <param name="Path">Its path within the library, with slashes whatever the machine.</param>
/// <param name="File">Where it is on disk.</param>
internal sealed record LibraryItem(string Path, string File)
{
    /// <summary>What follows a file's name in that of its baseline, which lies beside it.</summary>
    public const string BaselineEnding = ".baseline.json";

    /// <summary>True for a page of dimensions, false for a drawing.</summary>
    public bool IsPattern => !File.EndsWith(".dxf", StringComparison.OrdinalIgnoreCase);

    /// <summary>Where its baseline lies.</summary>
    public string BaselineFile => File + BaselineEnding;
}
