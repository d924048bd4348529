using System.CommandLine;
using System.CommandLine.Invocation;

namespace Flushback.Cli.Commands;

/// <summary>The program's own help lists each command by its first line; a command's help tells all of it.</summary>
/// <param name="whole">Prints what the library prints.</param>
internal sealed class CommandListHelp(SynchronousCommandLineAction whole) : SynchronousCommandLineAction
{
    /// <inheritdoc/>
    /// <remarks>Who asks for help need not have named a file yet.</remarks>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        if (parseResult.CommandResult.Command is RootCommand root)
        {
            foreach (Command command in root.Subcommands)
            {
                command.Description = command.Description?.Split('\n')[0];
            }
        }

        return whole.Invoke(parseResult);
    }
}
