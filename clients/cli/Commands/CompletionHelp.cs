namespace Flushback.Cli.Commands;

/// <summary>What <c>completion --help</c> says before the arguments.</summary>
internal static class CompletionHelp
{
    /// <summary>The job of the command, and examples.</summary>
    public const string Description = """
        Prints a script with which a shell completes commands, options and their values at a press of Tab.

        The program has to be found by the name flushback, in a folder of PATH.

        Examples:
          source <(flushback completion bash)         in ~/.bashrc
          source <(flushback completion zsh)          in ~/.zshrc, after compinit
          flushback completion fish | source          in ~/.config/fish/config.fish
        """;
}
