using System.Runtime.InteropServices;

namespace Flushback.Dxf.Tests;

/// <summary>The processor time of one thread, which other work on the machine does not lengthen (POSIX, pthread_getcpuclockid).</summary>
internal sealed class ProcessorTime
{
    private readonly int _clock;
    private readonly TimeSpan _before;

    private ProcessorTime()
    {
        Assert.Equal(0, GetClock(Self(), out _clock));
        _before = Now();
    }

    /// <summary>Starts the clock of the thread that calls; any thread may read it while that one lives.</summary>
    public static ProcessorTime OfThisThread() => new();

    /// <summary>What the thread has computed since then.</summary>
    public TimeSpan Spent => Now() - _before;

    private TimeSpan Now()
    {
        Assert.Equal(0, Read(_clock, out Time time));
        return TimeSpan.FromSeconds(time.Seconds) + TimeSpan.FromMicroseconds(time.Nanoseconds / 1000.0);
    }

    [DllImport("libc", EntryPoint = "pthread_self")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern nint Self();

    [DllImport("libc", EntryPoint = "pthread_getcpuclockid")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int GetClock(nint thread, out int clock);

    [DllImport("libc", EntryPoint = "clock_gettime")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Read(int clock, out Time time);

    [StructLayout(LayoutKind.Sequential)]
    private readonly struct Time
    {
        public readonly nint Seconds;
        public readonly nint Nanoseconds;
    }
}
