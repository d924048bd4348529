using System.Diagnostics;
using Xunit;

namespace Flushback.Catalogue.Tests;

public sealed class SampleFilesTests : IDisposable
{
    internal static readonly string Folder = Path.Combine(RepositoryRoot(), "clients", "samples");

    private readonly DirectoryInfo _fresh = Directory.CreateTempSubdirectory("flushback-samples-");

    [Theory]
    [InlineData("make_samples.py", "")]
    [InlineData("make_inspection_samples.py", "inspection")]
    public async Task The_committed_samples_are_what_the_script_writes(string name, string folder)
    {
        string committed = Path.Combine(Folder, folder);
        using Process script = Process.Start("python3", [Path.Combine(Folder, name), _fresh.FullName]);
        await script.WaitForExitAsync();
        Assert.Equal(0, script.ExitCode);

        string[] written = Names(_fresh.FullName);
        Assert.Equal(Names(committed), written);
        Assert.InRange(written.Length, 4, int.MaxValue);
        foreach (string file in written)
        {
            byte[] expected = await File.ReadAllBytesAsync(Path.Combine(_fresh.FullName, file));
            byte[] kept = await File.ReadAllBytesAsync(Path.Combine(committed, file));
            bool same = expected.AsSpan().SequenceEqual(kept);
            Assert.True(same, $"{file} differs from what {name} writes: run it and look at what changed.");
        }
    }

    public void Dispose() => _fresh.Delete(recursive: true);

    private static string[] Names(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*.dxf").Select(file => Path.GetFileName(file)).Order()];

    private static string RepositoryRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Flushback.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
