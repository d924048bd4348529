using System.CommandLine;
using Flushback.Cli.Arguments;
using Flushback.Cli.Output;
using Flushback.Cli.Regression.Baselines;
using Flushback.Cli.Regression.Items;
using Flushback.Cli.Regression.Running;
using Flushback.Cli.Regression.Telling;
using Flushback.Cli.Servers;
using Grpc.Core;

namespace Flushback.Cli.Commands;

/// <summary>The command <c>regress</c>: a library in, what is not as in its baselines out.</summary>
internal sealed class RegressCommand
{
    private const int UsualJobs = 8;
    private const int MostJobs = 1000;

    private readonly Argument<string> _folder = new("DIR")
    {
        Description = "The library: a folder with drawings and patterns.",
    };

    private readonly Option<bool> _update = new("--update")
    {
        Description = "Writes the baselines anew where they differ, and tells which.",
    };

    private readonly Option<string?> _output = new("--out")
    {
        HelpName = "DIR",
        Description = "Folder for the page with pictures, the results as JSON, as XML in JUnit's form, and as text.",
    };

    private readonly Option<int> _jobs = new("--jobs")
    {
        HelpName = "N",
        Description = $"How many items are sent ahead of their answers; {UsualJobs} without it.",
        DefaultValueFactory = _ => UsualJobs,
    };

    private readonly Option<TimeSpan?> _deadline = ParsedOption.One<TimeSpan?>(
        RemoteOptions.DeadlineName,
        "TIME",
        "How long the run may take, such as 10min; as long as it takes without it.",
        Wait.TryParse,
        Wait.Complaint
    );

    private readonly Option<bool> _fresh = new("--fresh")
    {
        Description = "Checks everything; without it a run that was interrupted goes on where it was.",
    };

    private readonly Option<bool> _json = new("--json") { Description = "Prints the results as JSON instead of text." };
    private readonly Option<bool> _quiet = new("--quiet") { Description = "Prints nothing; the exit code tells." };

    private readonly ServiceOptions _service = new();

    private RegressCommand()
    {
        _jobs.Validators.Add(given =>
        {
            if (
                given.Tokens.Count > 0
                && (!int.TryParse(given.Tokens[0].Value, out int jobs) || jobs is < 1 or > MostJobs)
            )
            {
                given.AddError($"--jobs: write a whole number from 1 to {MostJobs}.");
            }
        });
    }

    /// <summary>The command, ready to run.</summary>
    public static Command Create()
    {
        RegressCommand regress = new();
        Command command = new("regress", RegressHelp.Description) { regress._folder };
        regress._service.Join(command, regress.Options, regress.RunAsync);
        return command;
    }

    private IEnumerable<Option> Options =>
        [_update, _output, _service.Server, _deadline, _jobs, _fresh, _json, _quiet, _service.Verbose];

    private async Task<ExitCode> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        string root = parsed.GetRequiredValue(_folder);
        string? output = parsed.GetValue(_output);
        LibrarySettings settings = new(root);
        LibraryFolder folder = LibraryFolder.Read(root, settings.IsLeftOut, output);
        using Journal journal = Journal.Open(output ?? folder.Root, parsed.GetValue(_fresh));

        IReadOnlyList<ItemResult> results = Results.Of(
            folder,
            await AnswersAsync(parsed, folder, settings, journal, cancellation)
        );
        if (output is not null)
        {
            ResultFiles.Write(output, folder, results);
        }

        IReadOnlyList<string> updated = parsed.GetValue(_update) ? BaselineUpdate.Make(folder, results) : [];
        journal.Remove();
        if (!parsed.GetValue(_quiet))
        {
            Screen.Print(
                parsed.GetValue(_json) ? ResultsJson.Write(results) : SummaryText.Write(results) + Told(updated)
            );
        }

        return EndOf(results, parsed.GetValue(_update));
    }

    private async Task<IReadOnlyDictionary<string, Answered>> AnswersAsync(
        ParseResult parsed,
        LibraryFolder folder,
        LibrarySettings settings,
        Journal journal,
        CancellationToken cancellation
    )
    {
        using ProgressLine progress = new(folder.Items.Count);
        Answers answers = new(journal, progress);
        await using ServerConnection connection = await _service.ConnectAsync(parsed, cancellation);
        ItemStreams streams = new(
            connection,
            new ItemRequests(settings),
            new AnswerReading(settings),
            answers,
            parsed.GetValue(_jobs),
            parsed.GetValue(_deadline) is { } time ? (TimeProvider.System.GetUtcNow() + time).UtcDateTime : null
        );
        try
        {
            await new LibraryRun(streams, answers).FinishAsync(folder.Items, cancellation);
        }
        catch (RpcException) when (answers.Count > 0)
        {
            progress.Dispose();
            Complaints.Tell([
                $"{answers.Count} of {folder.Items.Count} items are finished and kept; the same command goes on from there.",
            ]);
            throw;
        }

        progress.Dispose();
        if (answers.FromBefore > 0 && !parsed.GetValue(_quiet))
        {
            await Console.Error.WriteLineAsync(
                $"flushback: {answers.FromBefore} items were finished by the run before."
            );
        }

        return answers.All;
    }

    private static string Told(IReadOnlyList<string> updated) =>
        updated.Count == 0
            ? ""
            : $"\nbaselines:\n{string.Concat(updated.Select(line => $"  {Printable.Line(line)}\n"))}";

    private static ExitCode EndOf(IReadOnlyList<ItemResult> results, bool isUpdated) =>
        results.All(result => result.Outcome == ItemOutcome.Same || (isUpdated && result.Outcome != ItemOutcome.Error))
            ? ExitCode.Clean
            : ExitCode.Findings;
}
