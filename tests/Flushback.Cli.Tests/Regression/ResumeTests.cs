using System.Collections.Concurrent;
using System.Diagnostics;
using System.Diagnostics.Metrics;
using Flushback.Cli.Tests.Running;
using Flushback.Deployment.Tests.Running;
using Flushback.Service;
using Flushback.Service.Queueing;
using Flushback.Service.Tests.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Flushback.Cli.Tests.Regression;

/// <summary>Runs that are ended by force: what they have finished is not asked for again, and nothing is lost.</summary>
public sealed class ResumeTests : IDisposable
{
    private const int Copies = 120;
    private const int Jobs = 4;
    private const int LetThrough = 30;
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

        _library.Put("many/library.yaml", "all:\n  step: 0.5\n");
    }

    [Fact]
    public async Task A_client_that_is_killed_goes_on_where_it_was_and_ends_as_one_that_was_not()
    {
        await using WebApplication host = await StartAsync(port: 0);
        string server = host.Urls.Single();
        Ending whole = await _library.RegressAsync("--server", server, "--out", _library.Beside("whole"));
        using ItemCount items = new(host);

        await KillInTheMiddleAsync(host);
        int finished = LinesOf(await ReadJournalAsync());
        await Eventually.IsTrueAsync(() => items.Count == LetThrough);
        Ending rest = await _library.RegressAsync("--server", server, "--out", _library.Beside("out"));

        Assert.Contains("items were finished by the run before", rest.Error, StringComparison.Ordinal);
        Assert.Equal(whole.Output, rest.Output);
        AssertSameFiles("whole", "out");

        // What was under way as the client died may be asked for twice, and nothing else.
        Assert.InRange(finished, LetThrough - 1, LetThrough);
        Assert.InRange(items.Count, Copies + 4, Copies + 4 + LetThrough - finished);
    }

    [Fact]
    public async Task A_server_that_dies_and_comes_back_loses_nothing()
    {
        using KeptPort port = new();
        WebApplication host = await StartAsync(port.Number);
        string server = host.Urls.Single();
        Ending whole = await _library.RegressAsync("--server", server, "--out", _library.Beside("whole"));

        Turn taken = await TakeTurnAsync(host);
        Task<Ending> run = _library.RegressAsync(
            "--server",
            server,
            "--jobs",
            $"{Jobs}",
            "--out",
            _library.Beside("out")
        );
        taken = await LetThroughAsync(host, taken);
        await host.StopAsync(new CancellationToken(canceled: true));
        await host.DisposeAsync();
        taken.Dispose();

        await using WebApplication again = await StartAsync(port.Number);
        Ending after = await run;

        Assert.Equal((whole.ExitCode, whole.Output, ""), (after.ExitCode, after.Output, after.Error));
        AssertSameFiles("whole", "out");
    }

    [Fact]
    public async Task A_server_that_stays_away_ends_the_run_and_what_is_finished_is_kept()
    {
        using KeptPort port = new();
        WebApplication host = await StartAsync(port.Number);
        string server = host.Urls.Single();
        Turn taken = await TakeTurnAsync(host);
        Task<Ending> run = _library.RegressAsync(
            "--server",
            server,
            "--jobs",
            $"{Jobs}",
            "--out",
            _library.Beside("out")
        );
        taken = await LetThroughAsync(host, taken);
        await host.DisposeAsync();
        taken.Dispose();

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
        await KillInTheMiddleAsync(host);
        byte[] journal = await ReadJournalAsync();
        _library.Put("many/library.yaml", "all:\n  step: 0.6\n");

        using ItemCount items = new(host);
        await _library.RegressAsync("--server", server, "--out", _library.Beside("out"));
        Assert.InRange(items.Count, Copies, Copies + 4);

        // And a line that was cut off is none.
        _library.Put("many/library.yaml", "all:\n  step: 0.5\n");
        await File.WriteAllBytesAsync(Path.Combine(_library.Beside("out"), JournalName), journal[..^20]);
        int before = items.Count;
        await _library.RegressAsync("--server", server, "--out", _library.Beside("out"));
        Assert.Equal(Copies + 4 - (LinesOf(journal) - 1), items.Count - before);

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
            "--Limits:Parallel=1",
        ]);
        await host.StartAsync();
        return host;
    }

    private static Task<Turn> TakeTurnAsync(WebApplication host) => GateOf(host).EnterAsync("the test", default);

    private static WorkGate GateOf(WebApplication host) => host.Services.GetRequiredService<WorkGate>();

    private async Task KillInTheMiddleAsync(WebApplication host)
    {
        Turn taken = await TakeTurnAsync(host);
        using Process client = Client.Start(
            "regress",
            _library.Folder,
            "--server",
            host.Urls.Single(),
            "--jobs",
            $"{Jobs}",
            "--out",
            _library.Beside("out")
        );
        taken = await LetThroughAsync(host, taken);
        client.Kill();
        await client.WaitForExitAsync();

        // The service gives up what it has in hand before it may go on.
        await Eventually.IsTrueAsync(() => GateOf(host).Waiting == 0);
        taken.Dispose();
    }

    /// <summary>Lets so many items through, one a turn, and has the service stand still behind them, items in hand.</summary>
    /// <param name="host">The service, which computes one at a time.</param>
    /// <param name="taken">The turn that the test has.</param>
    /// <returns>The turn that the test has now.</returns>
    private async Task<Turn> LetThroughAsync(WebApplication host, Turn taken)
    {
        WorkGate gate = GateOf(host);
        for (int i = 0; i < LetThrough; i++)
        {
            await Eventually.IsTrueAsync(() => gate.Waiting == Jobs);
            Task<Turn> next = TakeTurnAsync(host);
            taken.Dispose();
            taken = await next;
        }

        // As many as before wait again: so the client has taken every answer, and written down all but perhaps the last.
        await Eventually.IsTrueAsync(() => gate.Waiting == Jobs);
        return taken;
    }

    private Task<byte[]> ReadJournalAsync() =>
        File.ReadAllBytesAsync(Path.Combine(_library.Beside("out"), JournalName));

    // A line that was cut off is none.
    private static int LinesOf(byte[] journal) => journal.Count(letter => letter == '\n');

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

    /// <summary>Counts the items that a service in this process answers.</summary>
    private sealed class ItemCount : IDisposable
    {
        private readonly MeterListener _listener = new();
        private readonly ConcurrentBag<double> _seen = [];

        public ItemCount(WebApplication host)
        {
            IMeterFactory ofTheService = host.Services.GetRequiredService<IMeterFactory>();
            _listener.InstrumentPublished = (instrument, listener) =>
            {
                if (instrument.Meter.Scope == ofTheService && instrument.Name == "flushback.item.duration")
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
