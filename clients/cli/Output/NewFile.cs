using Flushback.Cli.Commands;

namespace Flushback.Cli.Output;

/// <summary>Writes a file that must not be there yet.</summary>
internal static class NewFile
{
    /// <summary>Writes it whole, or not at all.</summary>
    /// <exception cref="BadInputException">There is something of that name, or it cannot be written.</exception>
    public static void Write(string path, byte[] bytes)
    {
        try
        {
            using FileStream file = new(path, FileMode.CreateNew);
            file.Write(bytes);
        }
        catch (IOException) when (Path.Exists(path))
        {
            throw new BadInputException($"'{path}' is there already; name another file, or take it away first.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new BadInputException($"'{path}' cannot be written: {fault.Message}");
        }
    }
}
