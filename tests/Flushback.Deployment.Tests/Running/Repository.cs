using System.Runtime.CompilerServices;

namespace Flushback.Deployment.Tests.Running;

/// <summary>Where the sources are.</summary>
internal static class Repository
{
    /// <summary>A path in the repository.</summary>
    public static string PathOf(string path) => Path.Combine(Root(), path);

    private static string Root([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../.."));
}
