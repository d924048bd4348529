using System.Globalization;

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
            long length = new FileInfo(path).Length;
            if (length > LargestBytes)
            {
                throw new BadInputException(TooLarge(path, length));
            }

            return await File.ReadAllBytesAsync(path, cancellation);
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

    private static string TooLarge(string path, long length) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"'{path}' has {length:N0} bytes, more than a drawing of one knife can need; save only blade, spring, handle and pins."
        );
}
