using System.Diagnostics.CodeAnalysis;

namespace Flushback.Cli.Arguments;

/// <summary>Shares on the command line: a number and a percent sign, such as <c>95%</c>.</summary>
internal static class Percent
{
    /// <summary>What is wrong with a text that is no share.</summary>
    public static string Complaint(string text) =>
        $"'{text}' is not a share: write it in percent, such as 95%, from 0% to 100%.";

    /// <summary>Reads a share, from 0 to 1.</summary>
    public static bool TryParse(string text, [NotNullWhen(true)] out double? share)
    {
        share = null;
        if (text.EndsWith('%') && Number.TryParse(text[..^1], out double percent) && percent is >= 0 and <= 100)
        {
            share = percent / 100;
        }

        return share is not null;
    }
}
