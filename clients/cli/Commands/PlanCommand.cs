using System.CommandLine;
using Flushback.Cli.Output;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The command <c>plan</c>: a drawing and what is wanted in, the passes that lead there out.</summary>
internal sealed class PlanCommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "The drawing, as DXF." };

    private readonly Option<string?> _output = new("--out")
    {
        HelpName = "DIR",
        Description = "Folder for the plan as page, text and JSON, the corrected drawing, the card and the passes.",
    };

    private readonly Option<string?> _passesOut = new("--passes-out")
    {
        HelpName = "FILE",
        Description = "Writes the passes alone, as YAML that simulate --passes takes.",
    };

    private readonly Option<string?> _name = new("--name")
    {
        HelpName = "TEXT",
        Description = "What you call the knife; the name of the file without it.",
    };

    private readonly ServiceOptions _service = new();
    private readonly PlanOptions _plan = new();
    private readonly KnifeOptions _knife = new();
    private readonly BenchOptions _bench = new();
    private readonly PrintOptions _print = new();

    private PlanCommand() { }

    /// <summary>The command, ready to run.</summary>
    public static Command Create()
    {
        PlanCommand plan = new();
        Command command = new("plan", PlanHelp.Description) { plan._file };
        plan._service.Join(command, plan.Options, plan.RunAsync);
        return command;
    }

    private IEnumerable<Option> Options =>
        [
            .. _bench.All,
            .. _plan.All,
            _output,
            _passesOut,
            _service.Server,
            _name,
            .. _knife.All,
            .. _print.All,
            _service.Verbose,
        ];

    private async Task<ExitCode> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        string path = parsed.GetRequiredValue(_file);
        PlanRequest request = ToRequest(parsed, await DrawingFile.ReadAsync(path, cancellation), path);
        PlanResponse response = await _service.CallAsync(
            parsed,
            (channel, options) => new BenchSimulator.BenchSimulatorClient(channel).PlanAsync(request, options),
            cancellation
        );
        OutputFiles.Write(FilesOf(parsed, response), path);
        _print.Print(parsed, response.Artifacts);
        return response.Report.ReachesTargets ? ExitCode.Clean : ExitCode.Findings;
    }

    private PlanRequest ToRequest(ParseResult parsed, byte[] dxf, string path)
    {
        PlanRequest request = new()
        {
            Name = parsed.GetValue(_name) ?? Path.GetFileNameWithoutExtension(path),
            Knife = _knife.ToKnife(parsed, dxf),
            Bench = _bench.ToSettings(parsed),
            Plan = _plan.ToSettings(parsed),
            Remains = _plan.RemainsIn(parsed),
            Measured = _plan.ReadingsIn(parsed),
        };
        if (parsed.GetValue(_output) is not null)
        {
            request.Artifacts.AddRange([
                ArtifactKind.Text,
                ArtifactKind.Html,
                ArtifactKind.Json,
                ArtifactKind.CorrectedDxf,
                ArtifactKind.CardHtml,
                ArtifactKind.CardPdf,
            ]);
        }
        else
        {
            request.Artifacts.Add(_print.KindIn(parsed));
        }

        return request;
    }

    private List<OutputFile> FilesOf(ParseResult parsed, PlanResponse response)
    {
        List<OutputFile> files = [];
        if (parsed.GetValue(_output) is { } folder)
        {
            files.AddRange(OutputFiles.In(folder, response.Artifacts));
            files.Add(new OutputFile(Path.Combine(folder, PassFileText.FileName), PassFileText.Of(response.Report)));
        }

        if (parsed.GetValue(_passesOut) is { } passes)
        {
            files.Add(new OutputFile(passes, PassFileText.Of(response.Report)));
        }

        return files;
    }
}
