using System.CommandLine;
using Flushback.Cli.Output;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The command <c>tolerance</c>: a drawing and tolerances in, the spread of random parts out.</summary>
internal sealed class ToleranceCommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "The drawing, as DXF." };

    private readonly Option<string?> _output = new("--out")
    {
        HelpName = "DIR",
        Description = "Folder for the page with histograms, the report as JSON and what each part reads as CSV.",
    };

    private readonly Option<string?> _name = new("--name")
    {
        HelpName = "TEXT",
        Description = "What you call the knife; the name of the file without it.",
    };

    private readonly ServiceOptions _service = new();
    private readonly ToleranceOptions _tolerances = new();
    private readonly KnifeOptions _knife = new();
    private readonly BenchOptions _bench = new();
    private readonly HandleOptions _handle = new();
    private readonly PrintOptions _print = new();

    private ToleranceCommand() { }

    /// <summary>The command, ready to run.</summary>
    public static Command Create()
    {
        ToleranceCommand tolerance = new();
        Command command = new("tolerance", ToleranceHelp.Description) { tolerance._file };
        tolerance._service.Join(command, tolerance.Options, tolerance.RunAsync);
        return command;
    }

    private IEnumerable<Option> Options =>
        [
            .. _tolerances.All,
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
        StudyRequest request = ToRequest(parsed, await DrawingFile.ReadAsync(path, cancellation), path);
        StudyReport report = new();
        List<Artifact> artifacts = [];
        await ProgressBar.ShowAsync(
            "parts",
            isWanted: !_print.IsQuietIn(parsed),
            tell =>
                _service.ReadAsync(
                    parsed,
                    (channel, options) => new ToleranceStudy.ToleranceStudyClient(channel).Study(request, options),
                    response =>
                    {
                        report = response.Report ?? report;
                        if (response.Progress is { } progress)
                        {
                            tell(progress.Solved, progress.Parts);
                        }
                        else if (response.Artifact is { } artifact)
                        {
                            artifacts.Add(artifact);
                        }
                    },
                    cancellation
                )
        );
        if (parsed.GetValue(_output) is { } folder)
        {
            OutputFiles.Write(OutputFiles.In(folder, artifacts), path);
        }

        _print.Print(parsed, artifacts);
        return _tolerances.EndOf(parsed, report.WithinTargets);
    }

    private StudyRequest ToRequest(ParseResult parsed, byte[] dxf, string path)
    {
        StudyRequest request = new()
        {
            Name = parsed.GetValue(_name) ?? Path.GetFileNameWithoutExtension(path),
            Knife = _knife.ToKnife(parsed, dxf),
            Bench = _bench.ToSettings(parsed),
        };
        _tolerances.Apply(parsed, request);
        if (_handle.ToSettings(parsed) is { } handle)
        {
            request.Handle = handle;
        }
        else if (_tolerances.NeedsHandle(parsed))
        {
            request.Handle = new HandleSettings();
        }

        if (parsed.GetValue(_output) is not null)
        {
            request.Artifacts.AddRange([
                ArtifactKind.Text,
                ArtifactKind.Html,
                ArtifactKind.Json,
                ArtifactKind.SpreadCsv,
            ]);
        }
        else
        {
            request.Artifacts.Add(_print.KindIn(parsed));
        }

        return request;
    }
}
