using System.Collections.Concurrent;
using System.Diagnostics;
using System.Diagnostics.Metrics;
using Flushback.Cli.Tests.Running;
using Flushback.Service;
using Microsoft.AspNetCore.Builder;

namespace Flushback.Cli.Tests.Regression;

/// <summary>Runs that are ended by force: what they have finished is not asked for again, and nothing is lost.</summary>
public sealed class ResumeTests : IDisposable
{
    private const int Copies = 120;
    private const int Jobs = 4;
    private const int BytesOfALine = 3000;
    private const string JournalName = ".flushback-regress.jsonl";

    private readonly LibraryOnDisk _library = LibraryOnDisk.OfFour();

    public ResumeTests()
    {
        byte[] wagtail = File.ReadAllBytes(_library.PathOf("wagtail.dxf"));
        for (int i = 0; i < Copies; i++)
        {
            byte[] comment = System.Text.Encoding.ASCII.GetBytes($"999\n{i}\n");
            _library.Put($"many/wagtail-{i:000}.dxf", [.. comment, .. wagtail]);
        }

        // Work of some tens of milliseconds an item, so that a run can be ended in its middle.
        _library.Put("many/library.yaml", "all:\n  step: 0.05\n");
    }

    [Fact]
    public async Task A_client_that_is_killed_goes_on_where_it_was_and_ends_as_one_that_was_not()
    {
        await using WebApplication host = await StartAsync(port: 0);
        string server = host.Urls.Single();
        Ending whole = await _library.RegressAsync("--server", server, "--out", _library.Beside("whole"));
        using ItemCount items = new();

        await KillInTheMiddleAsync(server);
        int finished = File.ReadAllLines(Path.Combine(_library.Beside("out"), JournalName)).Length;
        int asked = items.Count;
        Ending rest = await _library.RegressAsync("--server", server, "--out", _library.Beside("out"));

        Assert.InRange(finished, 1, Copies);
        Assert.Contains("items were finished by the run before", rest.Error, StringComparison.Ordinal);
        Assert.Equal(whole.Output, rest.Output);
        AssertSameFiles("whole", "out");

        // What was under way as the client died may be asked for twice, and nothing else.
        Assert.InRange(items.Count, Copies + 4, Copies + 4 + asked - finished);
        Assert.InRange(asked - finished, 0, 16 + Jobs);
    }

    [Fact]
    public async Task A_server_that_dies_and_comes_back_loses_nothing()
    {
        WebApplication host = await StartAsync(port: 0);
        string server = host.Urls.Single();
        Ending whole = await _library.RegressAsync("--server", server, "--out", _library.Beside("whole"));

        Task<Ending> run = _library.RegressAsync("--server", server, "--out", _library.Beside("out"));
        await ReachAsync(Copies / 4);
        using (CancellationTokenSource atOnce = new(TimeSpan.Zero))
        {
            await host.StopAsync(atOnce.Token);
            await host.DisposeAsync();
        }

        await using WebApplication again = await StartAsync(new Uri(server).Port);
        Ending after = await run;

        Assert.Equal((whole.ExitCode, whole.Output, ""), (after.ExitCode, after.Output, after.Error));
        AssertSameFiles("whole", "out");
    }

    [Fact]
    public async Task A_server_that_stays_away_ends_the_run_and_what_is_finished_is_kept()
    {
        WebApplication host = await StartAsync(port: 0);
        string server = host.Urls.Single();
        Task<Ending> run = _library.RegressAsync("--server", server, "--out", _library.Beside("out"));
        await ReachAsync(Copies / 4);
        await host.DisposeAsync();

        Ending ending = await run;

        Assert.Equal(3, ending.ExitCode);
        Assert.Matches("^[0-9]+ of 124 items are finished and kept", ending.Complaints[0]);
        Assert.Equal([JournalName], Directory.GetFiles(_library.Beside("out")).Select(Path.GetFileName));

        Ending inside = await _library.RegressAsync("--out", _library.Beside("out"));
        Assert.Contains("items were finished by the run before", inside.Error, StringComparison.Ordinal);
        Assert.DoesNotContain(JournalName, Directory.GetFiles(_library.Beside("out")).Select(Path.GetFileName));
    }

    [Fact]
    public async Task What_is_changed_in_between_is_asked_for_again_and_a_fresh_run_asks_for_all()
    {
        await using WebApplication host = await StartAsync(port: 0);
        string server = host.Urls.Single();
        await KillInTheMiddleAsync(server);
        byte[] journal = await File.ReadAllBytesAsync(Path.Combine(_library.Beside("out"), JournalName));
        _library.Put("many/library.yaml", "all:\n  step: 0.06\n");

        using ItemCount items = new();
        await _library.RegressAsync("--server", server, "--out", _library.Beside("out"));
        Assert.InRange(items.Count, Copies, Copies + 4);

        // And a line that was cut off is none.
        _library.Put("many/library.yaml", "all:\n  step: 0.05\n");
        await File.WriteAllBytesAsync(Path.Combine(_library.Beside("out"), JournalName), journal[..^20]);
        int before = items.Count;
        await _library.RegressAsync("--server", server, "--out", _library.Beside("out"));
        int lines = journal.Count(letter => letter == '\n');
        Assert.Equal(Copies + 4 - (lines - 1), items.Count - before);

        await File.WriteAllBytesAsync(Path.Combine(_library.Beside("out"), JournalName), journal);
        before = items.Count;
        await _library.RegressAsync("--server", server, "--out", _library.Beside("out"), "--fresh");
        Assert.Equal(Copies + 4, items.Count - before);
    }

    /// <inheritdoc/>
    public void Dispose() => _library.Dispose();

    private static async Task<WebApplication> StartAsync(int port)
    {
        WebApplication host = FlushbackHost.Build([
            "--urls",
            $"http://127.0.0.1:{port}",
            "--Logging:LogLevel:Default=None",
            "--Drain:FinishSeconds=0",
        ]);
        await host.StartAsync();
        return host;
    }

    private async Task KillInTheMiddleAsync(string server)
    {
        using Process client = Client.Start(
            "regress",
            _library.Folder,
            "--server",
            server,
            "--jobs",
            $"{Jobs}",
            "--out",
            _library.Beside("out")
        );
        await ReachAsync(Copies / 4);
        client.Kill();
        await client.WaitForExitAsync();

        // What the service still has in hand it counts a little later.
        await Task.Delay(TimeSpan.FromSeconds(1));
    }

    private async Task ReachAsync(int lines)
    {
        using CancellationTokenSource late = new(TimeSpan.FromMinutes(2));
        string path = Path.Combine(_library.Beside("out"), JournalName);
        while (!File.Exists(path) || Lines(path) < lines)
        {
            await Task.Delay(5, late.Token);
        }
    }

    // About so many: the client keeps the file for itself, but its length is told all the same.
    private static int Lines(string path) => (int)(new FileInfo(path).Length / BytesOfALine);

    private void AssertSameFiles(string one, string other)
    {
        string[] names = [.. Directory.GetFiles(_library.Beside(one)).Select(path => Path.GetFileName(path)!)];
        Assert.Equal(4, names.Length);
        Assert.Equal(
            names.Order(),
            Directory.GetFiles(_library.Beside(other)).Select(path => Path.GetFileName(path)!).Order()
        );
        Assert.All(
            names,
            name =>
                Assert.Equal(
                    File.ReadAllBytes(Path.Combine(_library.Beside(one), name)),
                    File.ReadAllBytes(Path.Combine(_library.Beside(other), name))
                )
        );
    }

    /// <summary>Counts the items that services in this process answer.</summary>
    private sealed class ItemCount : IDisposable
    {
        private readonly MeterListener _listener = new();
        private readonly ConcurrentBag<double> _seen = [];

        public ItemCount()
        {
            _listener.InstrumentPublished = (instrument, listener) =>
            {
                if (instrument.Name == "flushback.item.duration")
                {
                    listener.EnableMeasurementEvents(instrument);
                }
            };
            _listener.SetMeasurementEventCallback<double>((_, value, _, _) => _seen.Add(value));
            _listener.Start();
        }

        public int Count => _seen.Count;

        public void Dispose() => _listener.Dispose();
    }
}
