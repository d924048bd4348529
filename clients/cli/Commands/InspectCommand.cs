using System.CommandLine;
using Flushback.Cli.Output;
using Flushback.Contract.V1;
using Google.Protobuf;

namespace Flushback.Cli.Commands;

/// <summary>The command <c>inspect</c>: a drawing in, what a shop would say of it out.</summary>
internal sealed class InspectCommand
{
    private readonly Argument<string> _file = new("FILE") { Description = "The drawing, as DXF." };

    private readonly Option<string?> _output = new("--out")
    {
        HelpName = "DIR",
        Description =
            "Folder for the page, the report as text and JSON, and with --kerf the drawing with the cut path.",
    };

    private readonly Option<string?> _fix = new("--fix")
    {
        HelpName = "FILE|DIR",
        Description = "Writes a copy with what can be mended mended, and lists each change; never over the drawing.",
    };

    private readonly Option<string?> _name = new("--name")
    {
        HelpName = "TEXT",
        Description = "What you call the drawing; the name of the file without it.",
    };

    private readonly ServiceOptions _service = new();
    private readonly InspectOptions _inspect = new();
    private readonly PrintOptions _print = new();

    private InspectCommand() { }

    /// <summary>The command, ready to run.</summary>
    public static Command Create()
    {
        InspectCommand inspect = new();
        Command command = new("inspect", InspectHelp.Description) { inspect._file };
        inspect._service.Join(command, inspect.Options, inspect.RunAsync);
        return command;
    }

    private IEnumerable<Option> Options =>
        [_output, _fix, _service.Server, _name, .. _inspect.All, .. _print.All, _service.Verbose];

    private async Task<ExitCode> RunAsync(ParseResult parsed, CancellationToken cancellation)
    {
        string path = parsed.GetRequiredValue(_file);
        InspectRequest request = ToRequest(parsed, await DrawingFile.ReadAsync(path, cancellation), path);
        InspectResponse response = await _service.CallAsync(
            parsed,
            (channel, options) => new ProfileInspector.ProfileInspectorClient(channel).InspectAsync(request, options),
            cancellation
        );
        OutputFiles.Write(FilesOf(parsed, response, path), path);
        _print.Print(parsed, response.Artifacts);
        return Outcome.Of(response.Report.Findings.Select(finding => finding.Severity));
    }

    private InspectRequest ToRequest(ParseResult parsed, ReadOnlyMemory<byte> dxf, string path)
    {
        InspectRequest request = new()
        {
            Name = parsed.GetValue(_name) ?? Path.GetFileNameWithoutExtension(path),
            Dxf = UnsafeByteOperations.UnsafeWrap(dxf),
        };
        _inspect.Apply(parsed, request);
        if (parsed.GetValue(_output) is not null)
        {
            request.Artifacts.AddRange([ArtifactKind.Text, ArtifactKind.Html, ArtifactKind.Json]);
            if (_inspect.HasKerf(parsed))
            {
                request.Artifacts.Add(ArtifactKind.CutPathDxf);
            }
        }
        else
        {
            request.Artifacts.Add(_print.KindIn(parsed));
        }

        if (parsed.GetValue(_fix) is not null)
        {
            request.Artifacts.Add(ArtifactKind.RepairedDxf);
        }

        return request;
    }

    private IEnumerable<OutputFile> FilesOf(ParseResult parsed, InspectResponse response, string path)
    {
        IEnumerable<OutputFile> files = parsed.GetValue(_output) is { } folder
            ? OutputFiles.In(folder, response.Artifacts.Where(made => made.Kind != ArtifactKind.RepairedDxf))
            : [];
        return parsed.GetValue(_fix) is { } place
            ? files.Append(RepairedCopy.At(place, path, response.Artifacts))
            : files;
    }
}
