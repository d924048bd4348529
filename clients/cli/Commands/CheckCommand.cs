using System.CommandLine;
using Flushback.Cli.Output;
using Flushback.Cli.Servers;
using Flushback.Contract.V1;
using Grpc.Core;

namespace Flushback.Cli.Commands;

/// <summary>The command <c>check</c>: a drawing in, dial readings out.</summary>
internal sealed class CheckCommand
{
    // Far above what a check takes; it only ends the wait for a server that hangs.
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(60);

    private readonly Argument<string> _file = new("FILE") { Description = "The drawing, as DXF." };

    private readonly Option<string?> _output = new("--out")
    {
        HelpName = "DIR",
        Description = "Folder for the page, the report as JSON, the curves as CSV and the drawing with contacts.",
    };

    private readonly Option<Uri?> _server = ParsedOption.One<Uri?>(
        "--server",
        "URL",
        "A running service, such as http://127.0.0.1:5210; without it one is started inside this program.",
        ServerAddress.TryParse,
        ServerAddress.Complaint
    );

    private readonly Option<string?> _name = new("--name")
    {
        HelpName = "TEXT",
        Description = "What you call the knife; the name of the file without it.",
    };

    private readonly Option<bool> _json = new("--json") { Description = "Prints the report as JSON instead of text." };
    private readonly Option<bool> _quiet = new("--quiet") { Description = "Prints no report; the exit code tells." };

    private readonly Option<bool> _verbose = new("--verbose")
    {
        Description = "Prints what the service inside this program logs, to standard error.",
    };

    private readonly KnifeOptions _knife = new();
    private readonly BenchOptions _bench = new();
    private readonly HandleOptions _handle = new();

    private CheckCommand() { }

    /// <summary>The command, ready to run.</summary>
    public static Command Create()
    {
        CheckCommand check = new();
        Command command = new("check", CheckHelp.Description)
        {
            check._file,
            check._output,
            check._server,
            check._name,
        };
        foreach (Option option in check._knife.All.Concat(check._bench.All).Concat(check._handle.All))
        {
            command.Add(option);
        }

        command.Add(check._json);
        command.Add(check._quiet);
        command.Add(check._verbose);
        command.SetAction(async (parsed, cancellation) => (int)await check.RunAsync(parsed, cancellation));
        return command;
    }

    private async Task<ExitCode> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        try
        {
            string path = parsed.GetRequiredValue(_file);
            CheckRequest request = ToRequest(parsed, await DrawingFile.ReadAsync(path, cancellation), path);
            CheckResponse response = await CallAsync(parsed, request, cancellation);
            if (parsed.GetValue(_output) is { } folder)
            {
                ReportFolder.Write(folder, response.Artifacts, path);
            }

            if (!parsed.GetValue(_quiet))
            {
                Screen.Print(response.Artifacts, parsed.GetValue(_json) ? ArtifactKind.Json : ArtifactKind.Text);
            }

            bool isClean = response.Report.Findings.All(finding => finding.Severity <= Severity.Note);
            return isClean ? ExitCode.Clean : ExitCode.Findings;
        }
        catch (BadInputException bad)
        {
            Complaints.Tell([bad.Message]);
            return ExitCode.BadInput;
        }
        catch (Exception) when (cancellation.IsCancellationRequested)
        {
            return ExitCode.Interrupted;
        }
        catch (RpcException refused)
        {
            return Refusal.Tell(refused, parsed.GetValue(_server));
        }
    }

    private CheckRequest ToRequest(ParseResult parsed, byte[] dxf, string path)
    {
        CheckRequest request = new()
        {
            Name = parsed.GetValue(_name) ?? Path.GetFileNameWithoutExtension(path),
            Knife = _knife.ToKnife(parsed, dxf),
            Bench = _bench.ToSettings(parsed),
        };
        if (_handle.ToSettings(parsed) is { } handle)
        {
            request.Handle = handle;
        }

        if (parsed.GetValue(_output) is not null)
        {
            request.Artifacts.AddRange([
                ArtifactKind.Text,
                ArtifactKind.Html,
                ArtifactKind.Json,
                ArtifactKind.Csv,
                ArtifactKind.Dxf,
            ]);
            if (request.Handle is not null)
            {
                request.Artifacts.Add(ArtifactKind.HandleCsv);
            }
        }
        else
        {
            request.Artifacts.Add(parsed.GetValue(_json) ? ArtifactKind.Json : ArtifactKind.Text);
        }

        return request;
    }

    private async Task<CheckResponse> CallAsync(
        ParseResult parsed,
        CheckRequest request,
        CancellationToken cancellation
    )
    {
        await using ServerConnection connection = parsed.GetValue(_server) is { } address
            ? ServerConnection.To(address)
            : await OwnServer.StartAsync(parsed.GetValue(_verbose), cancellation);
        ProfileChecker.ProfileCheckerClient client = new(connection.Channel);
        DateTime deadline = (TimeProvider.System.GetUtcNow() + LongestWait).UtcDateTime;
        return await client.CheckAsync(request, deadline: deadline, cancellationToken: cancellation);
    }
}
