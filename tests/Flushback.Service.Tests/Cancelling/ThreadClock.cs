using System.Runtime.InteropServices;

namespace Flushback.Service.Tests.Cancelling;

/// <summary>The processor time that a thread has taken, as any other thread can read it (POSIX, pthread_getcpuclockid).</summary>
internal sealed class ThreadClock
{
    private readonly int _clock;

    /// <summary>The clock of the thread that makes it.</summary>
    public ThreadClock() => Assert.Equal(0, GetClock(Self(), out _clock));

    /// <summary>What the thread has taken since it began.</summary>
    public TimeSpan Taken
    {
        get
        {
            Assert.Equal(0, Read(_clock, out Time time));
            return TimeSpan.FromSeconds(time.Seconds) + TimeSpan.FromMicroseconds(time.Nanoseconds / 1000.0);
        }
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
