using System.CommandLine;
using Flushback.Cli.Output;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The command <c>simulate</c>: a drawing and passes in, dial readings after each pass out.</summary>
internal sealed class SimulateCommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "The drawing, as DXF." };

    private readonly Option<string?> _output = new("--out")
    {
        HelpName = "DIR",
        Description =
            "Folder for the page that steps through the passes, the report as JSON and the drawing with a layer a pass.",
    };

    private readonly Option<string?> _name = new("--name")
    {
        HelpName = "TEXT",
        Description = "What you call the knife; the name of the file without it.",
    };

    private readonly ServiceOptions _service = new();
    private readonly PassOptions _passes = new();
    private readonly KnifeOptions _knife = new();
    private readonly BenchOptions _bench = new();
    private readonly PrintOptions _print = new();

    private SimulateCommand() { }

    /// <summary>The command, ready to run.</summary>
    public static Command Create()
    {
        SimulateCommand simulate = new();
        Command command = new("simulate", SimulateHelp.Description) { simulate._file };
        simulate._service.Join(command, simulate.Options, simulate.RunAsync);
        return command;
    }

    private IEnumerable<Option> Options =>
        [
            .. _passes.All,
            _output,
            _service.Server,
            _name,
            .. _knife.All,
            .. _bench.All,
            .. _print.All,
            _service.Verbose,
        ];

    private async Task<ExitCode> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        string path = parsed.GetRequiredValue(_file);
        IReadOnlyList<Pass> passes = await _passes.ReadAsync(parsed, cancellation);
        SimulateRequest request = ToRequest(parsed, passes, await DrawingFile.ReadAsync(path, cancellation), path);
        SimulateResponse response = await _service.CallAsync(
            parsed,
            (channel, options) => new BenchSimulator.BenchSimulatorClient(channel).SimulateAsync(request, options),
            cancellation
        );
        if (parsed.GetValue(_output) is { } folder)
        {
            OutputFiles.Write(OutputFiles.In(folder, response.Artifacts), path);
        }

        _print.Print(parsed, response.Artifacts);
        return Outcome.Of(response.Report.Steps[^1].Findings.Select(finding => finding.Severity));
    }

    private SimulateRequest ToRequest(ParseResult parsed, IReadOnlyList<Pass> passes, byte[] dxf, string path)
    {
        SimulateRequest request = new()
        {
            Name = parsed.GetValue(_name) ?? Path.GetFileNameWithoutExtension(path),
            Knife = _knife.ToKnife(parsed, dxf),
            Bench = _bench.ToSettings(parsed),
            Remains = _passes.ToSettings(parsed),
            Passes = { passes },
        };
        if (parsed.GetValue(_output) is not null)
        {
            request.Artifacts.AddRange([ArtifactKind.Text, ArtifactKind.Html, ArtifactKind.Json, ArtifactKind.Dxf]);
        }
        else
        {
            request.Artifacts.Add(_print.KindIn(parsed));
        }

        return request;
    }
}
