using System.Diagnostics.CodeAnalysis;

namespace Flushback.Cli.Arguments;

/// <summary>Stretches of time on the command line: a number and its unit, such as <c>500ms</c>, <c>20s</c> or <c>2min</c>.</summary>
internal static class Wait
{
    private static readonly TimeSpan _longest = TimeSpan.FromDays(1);

    // The longer ending first where one ends like another.
    private static readonly (string Suffix, TimeSpan Unit)[] _units =
    [
        ("ms", TimeSpan.FromMilliseconds(1)),
        ("min", TimeSpan.FromMinutes(1)),
        ("s", TimeSpan.FromSeconds(1)),
    ];

    /// <summary>What is wrong with a text that is no stretch of time.</summary>
    public static string Complaint(string text) =>
        $"'{text}' is not a time to wait: write a number above zero and its unit, such as 500ms, 20s or 2min, up to a day.";

    /// <summary>Reads a stretch of time, above zero and up to a day.</summary>
    public static bool TryParse(string text, [NotNullWhen(true)] out TimeSpan? wait)
    {
        (string suffix, TimeSpan unit) = Array.Find(
            _units,
            known => text.EndsWith(known.Suffix, StringComparison.OrdinalIgnoreCase)
        );
        double value = 0;
        bool isTime =
            suffix is not null
            && Number.TryParse(text[..^suffix.Length], out value)
            && value > 0
            && value <= _longest / unit;
        wait = isTime ? unit * value : null;
        return isTime;
    }
}
