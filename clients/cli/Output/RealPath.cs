namespace Flushback.Cli.Output;

/// <summary>Where a path leads once every link on the way is followed.</summary>
internal static class RealPath
{
    /// <summary>True when two paths lead to one file, which need not be there yet.</summary>
    /// <remarks>Without regard to case: on a disk that has none, a file spelt otherwise is the same.</remarks>
    public static bool AreOne(string path, string other) =>
        string.Equals(Of(path), Of(other), StringComparison.OrdinalIgnoreCase);

    /// <summary>The path without links.</summary>
    private static string Of(string path)
    {
        string full = Path.GetFullPath(path);
        if (Path.GetDirectoryName(full) is not { } folder)
        {
            return full;
        }

        string real = Path.Combine(Of(folder), Path.GetFileName(full));
        FileSystemInfo place = Directory.Exists(real) ? new DirectoryInfo(real) : new FileInfo(real);
        if (!place.Exists)
        {
            return real;
        }

        return place.ResolveLinkTarget(returnFinalTarget: true) is { } target ? Of(target.FullName) : real;
    }
}
