using System.CommandLine;
using Flushback.Cli;
using Flushback.Cli.Commands;
using Flushback.Cli.Output;

RootCommand root = new(
    """
    Reads, from a drawing of a slip-joint folding knife, what a rise-and-fall dial on the bench would show, whether a
    shop can cut it, what passes at the grinder would change, and how parts made within tolerances would read.

    Exit codes: 0 clean, 1 there are findings above a note, 2 the input cannot be read or an option is wrong, 3 no
    server answered.
    """
)
{
    CheckCommand.Create(),
    InspectCommand.Create(),
    SimulateCommand.Create(),
    ToleranceCommand.Create(),
};

// An argument that begins with @ is a file of that name, not a list of more arguments.
ParseResult parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
if (parsed.Errors.Count > 0)
{
    Complaints.Tell(parsed.Errors.Select(error => error.Message));
    return (int)ExitCode.BadInput;
}

return await parsed.InvokeAsync(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
