using System.CommandLine;
using Flushback.Cli.Output;

namespace Flushback.Cli.Commands;

/// <summary>The command <c>completion</c>: a script that teaches a shell to complete this program's command line.</summary>
/// <remarks>The scripts ask the program itself each time, so that they know every command and option there is.</remarks>
internal static class CompletionCommand
{
    private static readonly Argument<string> _shell = new("SHELL") { Description = "bash, zsh or fish." };

    /// <summary>The command, ready to run.</summary>
    public static Command Create()
    {
        _shell.AcceptOnlyFromAmong("bash", "zsh", "fish");
        Command command = new("completion", CompletionHelp.Description) { _shell };
        command.SetAction(parsed => Screen.Print(ScriptFor(parsed.GetRequiredValue(_shell))));
        return command;
    }

    private static string ScriptFor(string shell)
    {
        using Stream script = typeof(CompletionCommand).Assembly.GetManifestResourceStream($"flushback.{shell}")!;
        using StreamReader reader = new(script);
        return reader.ReadToEnd();
    }
}
