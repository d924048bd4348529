using System.Diagnostics;
using Xunit;

namespace Flushback.Catalogue.Tests;

public sealed class SampleFilesTests : IDisposable
{
    internal static readonly string Folder = Path.Combine(RepositoryRoot(), "clients", "samples");

    private readonly DirectoryInfo _fresh = Directory.CreateTempSubdirectory("flushback-samples-");

    [Fact]
    public async Task The_committed_samples_are_what_the_script_writes()
    {
        using Process script = Process.Start("python3", [Path.Combine(Folder, "make_samples.py"), _fresh.FullName]);
        await script.WaitForExitAsync();
        Assert.Equal(0, script.ExitCode);

        string[] written = Names(_fresh.FullName);
        Assert.Equal(Names(Folder), written);
        Assert.InRange(written.Length, 5, int.MaxValue);
        foreach (string name in written)
        {
            byte[] expected = await File.ReadAllBytesAsync(Path.Combine(_fresh.FullName, name));
            byte[] committed = await File.ReadAllBytesAsync(Path.Combine(Folder, name));
            bool same = expected.AsSpan().SequenceEqual(committed);
            Assert.True(same, $"{name} differs from what make_samples.py writes: run it and look at what changed.");
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
