using System.CommandLine;

namespace Flushback.Cli.Commands;

/// <summary>Has a shell complete the values that the help shows as <c>mm|cm|in</c>.</summary>
internal static class ChoiceCompletion
{
    /// <summary>Gives every option of a command the choices that its help shows, where it has none of its own.</summary>
    public static void JoinTo(Command command)
    {
        foreach (Option option in command.Options.Where(option => ChoicesOf(option).Length > 1))
        {
            option.CompletionSources.Clear();
            option.CompletionSources.Add(ChoicesOf(option));
        }
    }

    // FILE|DIR are two kinds of value, not two values.
    private static string[] ChoicesOf(Option option) =>
        option.HelpName is { } shown && !shown.Any(char.IsAsciiLetterUpper) ? shown.Split('|') : [];
}
