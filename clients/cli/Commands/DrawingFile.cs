namespace Flushback.Cli.Commands;

/// <summary>Takes a drawing from disk.</summary>
internal static class DrawingFile
{
    // A service sets its own limit; this one only keeps a film or a disk image from filling the memory.
    private const long LargestBytes = 64 * 1024 * 1024;

    /// <summary>The bytes of a file.</summary>
    /// <exception cref="BadInputException">There is no such file, it cannot be read, or it is far too large.</exception>
    public static async Task<byte[]> ReadAsync(string path, CancellationToken cancellation)
    {
        if (Directory.Exists(path))
        {
            throw new BadInputException($"'{path}' is a folder; name the drawing in it.");
        }

        try
        {
            await using FileStream file = File.OpenRead(path);
            return await ReadAsync(file, path, cancellation);
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new BadInputException($"There is no file '{path}'; check the name and the folder.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new BadInputException($"'{path}' cannot be read: {fault.Message}");
        }
    }

    // A pipe or a device does not tell its length: count while reading.
    private static async Task<byte[]> ReadAsync(FileStream file, string path, CancellationToken cancellation)
    {
        using MemoryStream bytes = new();
        byte[] block = new byte[64 * 1024];
        int read;
        while ((read = await file.ReadAsync(block, cancellation)) > 0)
        {
            bytes.Write(block, 0, read);
            if (bytes.Length > LargestBytes)
            {
                throw new BadInputException(
                    $"'{path}' is larger than any drawing of a knife; save only what is to be read."
                );
            }
        }

        return bytes.ToArray();
    }
}
