using Flushback.Deployment.Tests.Running;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Xunit.Abstractions;

namespace Flushback.Deployment.Tests.Proxy;

/// <summary>A library held against its baselines through nginx while one replica after the other dies.</summary>
[Collection(Published.Name)]
public sealed class LostLibraryTests(PublishedService published, ITestOutputHelper output) : IDisposable
{
    private const int Copies = 80;
    private static readonly string _client = Path.Combine(AppContext.BaseDirectory, "flushback.dll");

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("flushback-lost-");

    [Fact]
    public async Task A_library_ends_with_the_same_bytes_though_each_replica_is_killed_once()
    {
        WriteLibrary();
        Replica[] replicas = [await Replica.StartAsync(published), await Replica.StartAsync(published)];
        try
        {
            await using Nginx nginx = await Nginx.StartAsync([.. replicas.Select(replica => replica.Address)]);
            (int exitCode, string printed) = await RunAsync(nginx, "whole");
            Assert.True(exitCode == 1, printed);

            await using StartedProgram run = Start(nginx, "disturbed");
            int killedAt = 0;
            for (int i = 0; i < replicas.Length; i++)
            {
                // Both while items are under way: after a quarter of them, and after half.
                // The run stands still meanwhile: it is not to end before another replica is there.
                killedAt = await ReachAsync(run, (i + 1) * Copies / 4);
                run.Halt();
                replicas[i].Program.Kill();
                replicas[i] = await replicas[i].ReplaceAsync(published);
                run.GoOn();
            }

            Assert.True(await run.EndAsync() == 1, run.Printed);
            output.WriteLine($"The second replica died after about {killedAt} of {Copies} items.");
            Assert.InRange(killedAt, 1, Copies - 1);
            AssertSameFiles();
        }
        finally
        {
            foreach (Replica replica in replicas)
            {
                await replica.DisposeAsync();
            }
        }
    }

    [Fact]
    public async Task A_library_larger_than_any_single_request_may_be_passes_through_nginx()
    {
        WriteLibrary(commentBytes: 400_000);
        await using Replica replica = await Replica.StartAsync(published);
        await using Nginx nginx = await Nginx.StartAsync([replica.Address, replica.Address]);

        (int exitCode, string printed) = await RunAsync(nginx, "whole");

        // New, all of them, and none in error; 32 MB over a stream, where a request may have 16.
        Assert.True(exitCode == 1, printed);
        Assert.Contains($"new{Copies, 12}\n", printed, StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private void WriteLibrary(int commentBytes = 0)
    {
        byte[] knife = LooseDrawing.Of(Catalogue.Designs.KnifeCatalogue.Wagtail.ToDrawn()).ToBytes();
        string filler = string.Concat(Enumerable.Repeat($"999\n{new string('x', 195)}\n", commentBytes / 200));
        DirectoryInfo library = _folder.CreateSubdirectory("library");
        for (int i = 0; i < Copies; i++)
        {
            byte[] comment = System.Text.Encoding.ASCII.GetBytes($"999\n{i}\n{filler}");
            File.WriteAllBytes(Path.Combine(library.FullName, $"wagtail-{i:000}.dxf"), [.. comment, .. knife]);
        }

        // Some tens of milliseconds of work an item, so that replicas can die in the middle.
        string fine = commentBytes == 0 ? "all:\n  step: 0.025\n  handle: yes\n" : "";
        File.WriteAllText(Path.Combine(library.FullName, "library.yaml"), fine);
    }

    private string[] Arguments(Nginx nginx, string results) =>
        [
            _client,
            "regress",
            Path.Combine(_folder.FullName, "library"),
            "--server",
            $"{nginx.Address}",
            "--authority-file",
            nginx.AuthorityFile,
            "--out",
            Path.Combine(_folder.FullName, results),
        ];

    private StartedProgram Start(Nginx nginx, string results) =>
        StartedProgram.Start("dotnet", Arguments(nginx, results));

    private Task<(int ExitCode, string Printed)> RunAsync(Nginx nginx, string results) =>
        StartedProgram.RunAsync("dotnet", Arguments(nginx, results));

    // About so many items, by the length of the journal.
    private async Task<int> ReachAsync(StartedProgram run, int items)
    {
        const int BytesOfALine = 4000;
        string journal = Path.Combine(_folder.FullName, "disturbed", ".flushback-regress.jsonl");
        int finished = 0;
        await Eventually.IsTrueAsync(() =>
        {
            Assert.False(run.HasEnded, $"The run ended before {items} items: {run.Printed}");
            finished = File.Exists(journal) ? (int)(new FileInfo(journal).Length / BytesOfALine) : 0;
            return finished >= items;
        });
        return finished;
    }

    private void AssertSameFiles()
    {
        string[] names = ["index.html", "junit.xml", "regress.json", "regress.txt"];
        Assert.All(
            names,
            name =>
                Assert.Equal(
                    File.ReadAllBytes(Path.Combine(_folder.FullName, "whole", name)),
                    File.ReadAllBytes(Path.Combine(_folder.FullName, "disturbed", name))
                )
        );
    }
}
