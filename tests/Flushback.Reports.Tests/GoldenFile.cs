using System.Text;

namespace Flushback.Reports.Tests;

/// <summary>
/// Compares a text byte for byte with the file kept for it under <c>Golden/</c>.
/// </summary>
/// <remarks>
/// After a wanted change, run the tests once with <c>FLUSHBACK_UPDATE_GOLDEN=1</c> in the environment: the files are then
/// written anew and the tests pass. Look at the difference (and at the page in a browser) before committing it.
/// </remarks>
internal static class GoldenFile
{
    private const string UpdateVariable = "FLUSHBACK_UPDATE_GOLDEN";

    public static void Matches(string fileName, string text)
    {
        string path = Path.Combine(Folder(), fileName);
        if (Environment.GetEnvironmentVariable(UpdateVariable) == "1")
        {
            File.WriteAllBytes(path, Encoding.UTF8.GetBytes(text));
        }

        Assert.True(
            File.Exists(path),
            $"{path} is missing: run the tests once with {UpdateVariable}=1 and look at it."
        );
        byte[] expected = File.ReadAllBytes(path);
        Assert.Equal(Encoding.UTF8.GetString(expected), text);
        Assert.Equal(expected, Encoding.UTF8.GetBytes(text));
    }

    private static string Folder()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Flushback.slnx")))
        {
            folder = folder.Parent;
        }

        Assert.NotNull(folder);
        return Path.Combine(folder.FullName, "tests", "Flushback.Reports.Tests", "Golden");
    }
}
