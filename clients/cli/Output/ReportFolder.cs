using Flushback.Cli.Commands;
using Flushback.Contract.V1;

namespace Flushback.Cli.Output;

/// <summary>Writes the files of a report into a folder: all of them whole, or none.</summary>
internal static class ReportFolder
{
    /// <summary>Writes the files.</summary>
    /// <param name="folder">The folder; made when it is not there.</param>
    /// <param name="artifacts">The files.</param>
    /// <param name="inputPath">The drawing, which is never written over.</param>
    /// <exception cref="BadInputException">The folder cannot be written, or a file would take the drawing's place.</exception>
    public static void Write(string folder, IReadOnlyCollection<Artifact> artifacts, string inputPath)
    {
        bool isNew = !Directory.Exists(folder);
        List<(string Temporary, string Final)> written = [];
        try
        {
            Directory.CreateDirectory(folder);
            foreach (Artifact artifact in artifacts)
            {
                string final = Path.Combine(folder, NameOf(artifact));
                RefuseInput(final, inputPath);
                string temporary = $"{final}.{Path.GetRandomFileName()}";
                written.Add((temporary, final));
                File.WriteAllBytes(temporary, artifact.Content.ToByteArray());
            }

            // Nothing is in its place until everything is on disk.
            written.ForEach(file => File.Move(file.Temporary, file.Final, overwrite: true));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
        {
            TakeBack(folder, isNew, written);
            throw new BadInputException($"The report cannot be written to '{folder}': {fault.Message}");
        }
        catch (BadInputException)
        {
            TakeBack(folder, isNew, written);
            throw;
        }
    }

    // A server proposes the name; it does not choose the folder.
    private static string NameOf(Artifact artifact)
    {
        string name = artifact.FileName;
        bool isPlain =
            name.Length > 0 && name[0] != '.' && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-' or '_');
        return isPlain
            ? name
            : throw new BadInputException(
                $"The service proposes a file name that is none: '{name}'; nothing was written."
            );
    }

    private static void RefuseInput(string final, string inputPath)
    {
        bool isInput = string.Equals(RealPath(final), RealPath(inputPath), StringComparison.OrdinalIgnoreCase);
        if (isInput)
        {
            throw new BadInputException(
                $"'{inputPath}' would be written over by the report; name another folder with --out."
            );
        }
    }

    // The same file may be reached by way of a linked folder.
    private static string RealPath(string path)
    {
        string full = Path.GetFullPath(path);
        DirectoryInfo folder = new(Path.GetDirectoryName(full)!);
        string real = folder.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? folder.FullName;
        return Path.Combine(real, Path.GetFileName(full));
    }

    private static void TakeBack(string folder, bool isNew, List<(string Temporary, string Final)> written)
    {
        foreach ((string temporary, _) in written)
        {
            File.Delete(temporary);
        }

        if (isNew && Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any())
        {
            Directory.Delete(folder);
        }
    }
}
