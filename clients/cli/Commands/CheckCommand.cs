using System.CommandLine;
using Flushback.Cli.Output;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The command <c>check</c>: a drawing in, dial readings out.</summary>
internal sealed class CheckCommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "The drawing, as DXF." };

    private readonly Option<string?> _output = new("--out")
    {
        HelpName = "DIR",
        Description = "Folder for the page, the report as JSON, the curves as CSV and the drawing with contacts.",
    };

    private readonly Option<string?> _name = new("--name")
    {
        HelpName = "TEXT",
        Description = "What you call the knife; the name of the file without it.",
    };

    private readonly ServiceOptions _service = new();
    private readonly KnifeOptions _knife = new();
    private readonly BenchOptions _bench = new();
    private readonly HandleOptions _handle = new();
    private readonly PrintOptions _print = new();

    private CheckCommand() { }

    /// <summary>The command, ready to run.</summary>
    public static Command Create()
    {
        CheckCommand check = new();
        Command command = new("check", CheckHelp.Description) { check._file };
        check._service.Join(command, check.Options, check.RunAsync);
        return command;
    }

    private IEnumerable<Option> Options =>
        [
            _output,
            _service.Server,
            _name,
            .. _knife.All,
            .. _bench.All,
            .. _handle.All,
            .. _print.All,
            _service.Verbose,
        ];

    private async Task<ExitCode> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        string path = parsed.GetRequiredValue(_file);
        CheckRequest request = ToRequest(parsed, await DrawingFile.ReadAsync(path, cancellation), path);
        CheckResponse response = await _service.CallAsync(
            parsed,
            (channel, options) => new ProfileChecker.ProfileCheckerClient(channel).CheckAsync(request, options),
            cancellation
        );
        if (parsed.GetValue(_output) is { } folder)
        {
            OutputFiles.Write(OutputFiles.In(folder, response.Artifacts), path);
        }

        _print.Print(parsed, response.Artifacts);
        return Outcome.Of(response.Report.Findings.Select(finding => finding.Severity));
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
            request.Artifacts.Add(_print.KindIn(parsed));
        }

        return request;
    }
}
