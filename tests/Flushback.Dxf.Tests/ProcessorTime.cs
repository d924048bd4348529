using System.Globalization;

namespace Flushback.Dxf.Tests;

/// <summary>The processor time of one thread, which other work on the machine does not lengthen.</summary>
internal sealed class ProcessorTime
{
    // Of Linux, proc(5): fields 14 and 15 of stat, of which the 3rd is the first after the name in brackets; in ticks of
    // 1/100 s, which are USER_HZ on every machine that .NET runs on.
    private const int UserTicks = 14 - 3;
    private const int SystemTicks = 15 - 3;
    private const int TicksASecond = 100;

    private readonly string _file = $"/proc/{new FileInfo("/proc/thread-self").LinkTarget}/stat";
    private readonly TimeSpan _before;

    private ProcessorTime() => _before = Now();

    /// <summary>Starts the clock of the thread that calls; any thread may read it.</summary>
    public static ProcessorTime OfThisThread() => new();

    /// <summary>What the thread has computed since then.</summary>
    public TimeSpan Spent => Now() - _before;

    private TimeSpan Now()
    {
        string stat = File.ReadAllText(_file);
        string[] fields = stat[(stat.LastIndexOf(')') + 2)..].Split(' ');
        return TimeSpan.FromSeconds((Ticks(fields[UserTicks]) + Ticks(fields[SystemTicks])) / (double)TicksASecond);
    }

    private static long Ticks(string field) => long.Parse(field, CultureInfo.InvariantCulture);
}
