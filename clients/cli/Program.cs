using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using Flushback.Cli;
using Flushback.Cli.Commands;
using Flushback.Cli.Output;

RootCommand root = new(
    """
    Reads, from a drawing of a slip-joint folding knife, what a rise-and-fall dial on the bench would show, whether a
    shop can cut it, what passes at the grinder would change, which passes are needed, and how parts made within
    tolerances would read; draws a knife from its dimensions, and holds a library against its baselines.

    Exit codes: 0 clean, 1 there are findings above a note or a plan falls short, 2 the input cannot be read or an
    option is wrong, 3 no server answered.

    Examples:
      flushback check knife.dxf --out report
      flushback check --help
    """
)
{
    CheckCommand.Create(),
    InspectCommand.Create(),
    SimulateCommand.Create(),
    PlanCommand.Create(),
    ToleranceCommand.Create(),
    GenerateCommand.Create(),
    RegressCommand.Create(),
    CompletionCommand.Create(),
};

foreach (Command command in root.Subcommands)
{
    RemoteOptions.JoinTo(command);
    ChoiceCompletion.JoinTo(command);
}

HelpOption help = root.Options.OfType<HelpOption>().Single();
help.Action = new CommandListHelp((SynchronousCommandLineAction)help.Action!);

// A path may begin with a slash, so that /h and /? are no words of ours.
help.Aliases.Clear();
help.Aliases.Add("-h");

// An argument that begins with @ is a file of that name, not a list of more arguments.
ParseResult parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
if (parsed.Errors.Count > 0)
{
    Complaints.Tell(parsed.Errors.Select(error => error.Message));
    return (int)ExitCode.BadInput;
}

return await parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
