using System.Diagnostics;
using System.Text;

namespace Flushback.Deployment.Tests.Running;

/// <summary>A program as a process of its own, with all that it prints; ended with the test.</summary>
internal sealed class StartedProgram : IAsyncDisposable
{
    // So long that only what hangs comes to the end of it, however busy the machine is.
    private static readonly TimeSpan _longest = TimeSpan.FromMinutes(10);

    private readonly Process _process;
    private readonly StringBuilder _printed = new();

    private StartedProgram(Process process)
    {
        _process = process;
        process.OutputDataReceived += (_, line) => Keep(line.Data);
        process.ErrorDataReceived += (_, line) => Keep(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    /// <summary>Number of the process.</summary>
    public int Id => _process.Id;

    /// <summary>What it has computed so far, on all cores.</summary>
    public TimeSpan ProcessorTime => _process.TotalProcessorTime;

    /// <summary>True when it has ended.</summary>
    public bool HasEnded => _process.HasExited;

    /// <summary>All that it has printed so far.</summary>
    public string Printed
    {
        get
        {
            lock (_printed)
            {
                return _printed.ToString();
            }
        }
    }

    /// <summary>Starts it.</summary>
    public static StartedProgram Start(string name, IEnumerable<string> args)
    {
        ProcessStartInfo start = new(name, args)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = "/",
        };

        // What the machine says of addresses is for other services.
        start.Environment.Remove("ASPNETCORE_URLS");
        return new StartedProgram(Process.Start(start)!);
    }

    /// <summary>Runs it to its end; what it printed, and its exit code.</summary>
    public static async Task<(int ExitCode, string Printed)> RunAsync(string name, params string[] args)
    {
        await using StartedProgram program = Start(name, args);
        return (await program.EndAsync(), program.Printed);
    }

    /// <summary>Asks it to end, as whoever runs services does.</summary>
    public void Terminate() => Signal("TERM");

    /// <summary>Ends it without a word.</summary>
    public void Kill() => Signal("KILL");

    /// <summary>Has it stand still.</summary>
    public void Halt() => Signal("STOP");

    /// <summary>Has it go on.</summary>
    public void GoOn() => Signal("CONT");

    /// <summary>Waits for its end.</summary>
    /// <returns>The exit code.</returns>
    public async Task<int> EndAsync()
    {
        using CancellationTokenSource late = new(_longest);
        await _process.WaitForExitAsync(late.Token);
        return _process.ExitCode;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
            await _process.WaitForExitAsync();
        }

        _process.Dispose();
    }

    private void Signal(string name)
    {
        using Process kill = Process.Start("kill", [$"-{name}", $"{Id}"]);
        kill.WaitForExit();
    }

    private void Keep(string? line)
    {
        if (line is not null)
        {
            lock (_printed)
            {
                _printed.AppendLine(line);
            }
        }
    }
}
