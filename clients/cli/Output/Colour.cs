using System.Text.RegularExpressions;

namespace Flushback.Cli.Output;

/// <summary>Colour where a person reads: on a terminal, unless NO_COLOR is set. Never in a pipe or a file.</summary>
internal static partial class Colour
{
    private const string Plain = "\e[0m";
    private const string Bold = "\e[1m";
    private const string Red = "\e[1;31m";
    private const string Yellow = "\e[1;33m";

    /// <summary>Whether standard output takes colour.</summary>
    public static bool OnOutput => IsWanted && !Console.IsOutputRedirected;

    /// <summary>Whether standard error takes colour.</summary>
    public static bool OnError => IsWanted && !Console.IsErrorRedirected;

    // A console of Windows shows these sequences as they are unless it is told otherwise.
    private static bool IsWanted =>
        string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
        && Environment.GetEnvironmentVariable("TERM") is not (null or "" or "dumb")
        && !OperatingSystem.IsWindows();

    /// <summary>A report with its headings bold and the first word of each fault and warning in colour.</summary>
    public static string Report(string text) =>
        Headings()
            .Replace(text, $"{Bold}$1{Plain}")
            .Replace("\nFAULT:", $"\n{Red}FAULT:{Plain}", StringComparison.Ordinal)
            .Replace("\nWARNING:", $"\n{Yellow}WARNING:{Plain}", StringComparison.Ordinal);

    /// <summary>What stands before a complaint.</summary>
    public static string Alarm(string text) => $"{Red}{text}{Plain}";

    // A line with one of nothing but strokes below it.
    [GeneratedRegex(@"^(.+)$(?=\n(?:-{20,}|={20,})$)", RegexOptions.Multiline)]
    private static partial Regex Headings();
}
