using Flushback.Cli.Commands;
using Flushback.Contract.V1;
using Google.Protobuf;

namespace Flushback.Cli.Output;

/// <summary>Writes the files of a run: all of them whole, or none.</summary>
internal static class OutputFiles
{
    /// <summary>The files of a report in a folder.</summary>
    /// <exception cref="BadInputException">The service proposes a name that is none.</exception>
    public static IEnumerable<OutputFile> In(string folder, IEnumerable<Artifact> artifacts) =>
        artifacts.Select(artifact => new OutputFile(Path.Combine(folder, NameOf(artifact)), artifact.Content));

    /// <summary>Writes the files; folders are made where there are none.</summary>
    /// <param name="files">The files.</param>
    /// <param name="inputPath">The drawing, which is never written over.</param>
    /// <exception cref="BadInputException">A file cannot be written, or would take the drawing's place.</exception>
    public static void Write(IEnumerable<OutputFile> files, string inputPath)
    {
        List<(string Temporary, string Final)> written = [];
        List<string> madeFolders = [];
        string place = "";
        try
        {
            foreach (OutputFile file in files)
            {
                place = file.Path;
                Refuse(file.Path, inputPath);
                RefuseTwice(file.Path, written.Select(other => other.Final));
                MakeFolder(Path.GetDirectoryName(Path.GetFullPath(file.Path))!, madeFolders);
                string temporary = $"{file.Path}.{Path.GetRandomFileName()}";
                written.Add((temporary, file.Path));
                File.WriteAllBytes(temporary, file.Content.ToByteArray());
            }

            // Nothing is in its place until everything is on disk.
            written.ForEach(file => File.Move(file.Temporary, file.Final, overwrite: true));
        }
        catch (Exception fault)
            when (fault is IOException or UnauthorizedAccessException or ArgumentException or BadInputException)
        {
            written.ForEach(file => File.Delete(file.Temporary));
            madeFolders.ForEach(TakeBack);
            throw fault is BadInputException ? fault : Unwritable(place, fault);
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

    private static void Refuse(string path, string inputPath)
    {
        if (RealPath.AreOne(path, inputPath))
        {
            throw new BadInputException(
                $"'{inputPath}' would be written over; name another place for what is written."
            );
        }

        if (Directory.Exists(path))
        {
            throw new BadInputException($"'{path}' is a folder where a file is to be written; name another place.");
        }
    }

    private static void RefuseTwice(string path, IEnumerable<string> others)
    {
        if (others.Any(other => RealPath.AreOne(path, other)))
        {
            throw new BadInputException($"'{path}' would be written twice; name another place for one of the files.");
        }
    }

    private static void MakeFolder(string folder, List<string> made)
    {
        // The innermost first, so that they can be taken back in this order.
        int before = made.Count;
        for (string? missing = folder; missing is not null && !Directory.Exists(missing); )
        {
            made.Insert(made.Count, missing);
            missing = Path.GetDirectoryName(missing);
        }

        if (made.Count > before)
        {
            Directory.CreateDirectory(folder);
        }
    }

    private static void TakeBack(string folder)
    {
        if (Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any())
        {
            Directory.Delete(folder);
        }
    }

    private static BadInputException Unwritable(string path, Exception fault) =>
        new($"'{path}' cannot be written: {fault.Message}");
}

/// <summary>A file to write.</summary>
/// <param name="Path">Where it goes.</param>
/// <param name="Content">Its bytes.</param>
internal sealed record OutputFile(string Path, ByteString Content);
