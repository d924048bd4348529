using System.Diagnostics.CodeAnalysis;
using Flushback.Contract.V1;

namespace Flushback.Cli.Arguments;

/// <summary>
/// Passes in words, such as <c>slice half-stop-face front=2thou rear=0.05mm</c>: what is done, where, and by how much.
/// </summary>
internal static class PassText
{
    /// <summary>The forms a pass may have, an example each.</summary>
    public static IReadOnlyList<string> Examples { get; } =
    [
        "slice half-stop-face front=2thou rear=0.05mm",
        "wheel closed-face front=1thou rear=1thou radius=100mm",
        "round open-corner radius=0.5mm",
        "relieve closed-face depth=3thou front=1mm rear=1mm",
        "dress kick depth=2thou",
        "dress end-face angle=80 depth=0.1mm",
        "lower nose front=1thou rear=0mm",
        "shorten tip by=0.5mm allowed=yes",
    ];

    /// <summary>What is wrong with a text that is no pass.</summary>
    public static string Complaint(string text) => TryParse(text, out _, out string complaint) ? "" : complaint;

    /// <summary>Reads a pass.</summary>
    /// <param name="text">Verb, place and amounts, with blanks between.</param>
    /// <param name="pass">The pass.</param>
    /// <returns>False when the text is none.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out Pass? pass) => TryParse(text, out pass, out _);

    private static bool TryParse(string text, [NotNullWhen(true)] out Pass? pass, out string complaint)
    {
        pass = null;
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        if (words.Length < 2)
        {
            complaint = $"'{text}' is no pass: write what is done, where and by how much, such as {Examples[0]}.";
            return false;
        }

        Dictionary<string, string> amounts = new(StringComparer.OrdinalIgnoreCase);
        foreach (string word in words[2..])
        {
            string[] parts = word.Split('=', 2);
            if (parts.Length < 2 || !amounts.TryAdd(parts[0], parts[1]))
            {
                complaint =
                    $"'{word}' in '{text}' is no amount, or its name was given before; write a name, = and a value, such as radius=0.5mm.";
                return false;
            }
        }

        PassWords read = new(words[0], words[1], amounts);
        pass = read.ToPass();
        complaint = read.Complaint ?? "";
        return pass is not null;
    }
}
