namespace Flushback.Cli.Output;

/// <summary>Keeps what came from a drawing or a server from steering the terminal.</summary>
internal static class Printable
{
    /// <summary>A single line: every control character becomes a space.</summary>
    public static string Line(string text) => Without(text, char.IsControl);

    /// <summary>Text of many lines: every control character but the line feed becomes a space.</summary>
    public static string Lines(string text) =>
        Without(text, character => char.IsControl(character) && character != '\n');

    private static string Without(string text, Func<char, bool> isUnwanted) =>
        string.Create(
            text.Length,
            (text, isUnwanted),
            (span, from) =>
            {
                for (int i = 0; i < span.Length; i++)
                {
                    span[i] = from.isUnwanted(from.text[i]) ? ' ' : from.text[i];
                }
            }
        );
}
