namespace Flushback.Cli.Servers;

/// <summary>A folder for a socket that nobody else may open.</summary>
internal static class PrivateFolder
{
    // The path of a unix socket has 108 bytes at most on Linux and 104 elsewhere; the socket's own name needs a few.
    private const int LongestPath = 90;

    /// <summary>A new folder under the temporary one, mode 0700.</summary>
    public static DirectoryInfo Create()
    {
        // CreateTempSubdirectory makes the folder with mode 0700 from the start, so there is no moment of exposure.
        DirectoryInfo folder = Directory.CreateTempSubdirectory("flushback-");
        if (folder.FullName.Length <= LongestPath || OperatingSystem.IsWindows())
        {
            return folder;
        }

        folder.Delete();
        return Directory.CreateDirectory(
            Path.Combine("/tmp", Path.GetRandomFileName()),
            UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute
        );
    }
}
