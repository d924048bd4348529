using System.CommandLine;
using System.Text;
using Flushback.Cli.Output;
using Flushback.Cli.Patterns;
using Flushback.Contract.V1;
using Google.Protobuf;

namespace Flushback.Cli.Commands;

/// <summary>The command <c>generate</c>: a page of dimensions in, drawings and dial readings out.</summary>
internal sealed class GenerateCommand
{
    private const string StarterName = "pattern.yaml";

    private readonly Option<string?> _pattern = new("--pattern")
    {
        HelpName = "FILE",
        Description = "The page of dimensions, as YAML.",
    };

    private readonly Option<string?> _new = new("--new")
    {
        HelpName = "FILE",
        Description = $"Writes a page to begin with, {StarterName} where no file is named; never over another file.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private readonly Option<string?> _output = new("--out")
    {
        HelpName = "DIR",
        Description = "Folder for the drawings, the template to print, and the report of the check.",
    };

    private readonly Option<string?> _name = new("--name")
    {
        HelpName = "TEXT",
        Description = "What you call the knife; the name in the file, or of the file, without it.",
    };

    private readonly Option<bool> _fit = new("--fit")
    {
        Description =
            "Changes what the page leaves out, or what its list 'free' names, as little as takes every finding away; with --pull, for that pull too.",
    };

    private readonly ServiceOptions _service = new();
    private readonly GenerateOptions _form = new();
    private readonly BenchOptions _bench = new();
    private readonly HandleOptions _handle = new();
    private readonly PrintOptions _print = new();

    private GenerateCommand() { }

    /// <summary>The command, ready to run.</summary>
    public static Command Create()
    {
        GenerateCommand generate = new();
        Command command = new("generate", GenerateHelp.Description);
        generate._service.Join(command, generate.Options, generate.RunAsync);
        return command;
    }

    private IEnumerable<Option> Options =>
        [
            _pattern,
            _new,
            _output,
            _service.Server,
            _name,
            _fit,
            .. _form.All,
            .. _bench.All,
            .. _handle.All,
            .. _print.All,
            _service.Verbose,
        ];

    private Task<ExitCode> RunAsync(ParseResult parsed, CancellationToken cancellation) =>
        (parsed.GetValue(_pattern), parsed.GetResult(_new)) switch
        {
            (null, null) => throw new BadInputException(
                "There is nothing to draw: name a page of dimensions with --pattern, or write one with --new."
            ),
            (null, _) => BeginAsync(parsed, cancellation),
            ({ } path, null) => DrawAsync(parsed, path, cancellation),
            _ => throw new BadInputException("--new writes a page and --pattern draws one; give one of the two."),
        };

    private async Task<ExitCode> BeginAsync(ParseResult parsed, CancellationToken cancellation)
    {
        string path = parsed.GetValue(_new) ?? StarterName;
        ListPatternParametersResponse table = await _service.CallAsync(
            parsed,
            (channel, options) =>
                new ProfileExporter.ProfileExporterClient(channel).ListPatternParametersAsync(
                    new ListPatternParametersRequest(),
                    options
                ),
            cancellation
        );
        string name = parsed.GetValue(_name) ?? Path.GetFileNameWithoutExtension(path);
        NewFile.Write(path, Encoding.UTF8.GetBytes(StarterPage.Write(name, table)));
        return ExitCode.Clean;
    }

    private async Task<ExitCode> DrawAsync(ParseResult parsed, string path, CancellationToken cancellation)
    {
        GenerateRequest request = ToRequest(parsed, await PatternFile.ReadAsync(path, cancellation), path);
        GenerateResponse response = await _service.CallAsync(
            parsed,
            (channel, options) => new ProfileExporter.ProfileExporterClient(channel).GenerateAsync(request, options),
            cancellation
        );
        if (parsed.GetValue(_output) is { } folder)
        {
            OutputFiles.Write(
                [.. OutputFiles.In(folder, response.Artifacts), .. FittedPageIn(folder, request.Name, response)],
                path
            );
        }

        _print.Print(parsed, response.Artifacts);
        return response.Fitting is { Reached: false }
            ? ExitCode.Findings
            : Outcome.Of(
                response
                    .Report.Findings.Concat(response.Second?.Report.Findings ?? [])
                    .Select(finding => finding.Severity)
            );
    }

    private static IEnumerable<OutputFile> FittedPageIn(string folder, string name, GenerateResponse response)
    {
        if (response.Fitting is { Reached: true } fitting)
        {
            yield return new OutputFile(
                Path.Combine(folder, FittedPage.FileName),
                ByteString.CopyFromUtf8(FittedPage.Write(name, fitting))
            );
        }
    }

    private GenerateRequest ToRequest(ParseResult parsed, NamedPattern page, string path)
    {
        GenerateRequest request = new()
        {
            Name = parsed.GetValue(_name) ?? page.Name ?? Path.GetFileNameWithoutExtension(path),
            Pattern = page.Pattern,
            Arrangement = page.Arrangement,
            SecondBlade = page.SecondBlade,
            Bench = _bench.ToSettings(parsed),
        };
        _form.Apply(parsed, request);
        if (parsed.GetValue(_fit) || page.Free.Count > 0)
        {
            request.Fit = new PatternFit { NoFindings = parsed.GetValue(_fit), Free = { page.Free } };
        }

        if (_handle.ToSettings(parsed) is { } handle)
        {
            request.Handle = handle;
        }

        if (parsed.GetValue(_output) is null)
        {
            request.Artifacts.Add(_print.KindIn(parsed));
            return request;
        }

        request.Artifacts.AddRange([
            ArtifactKind.PatternDxf,
            ArtifactKind.CutSheetDxf,
            ArtifactKind.PatternSvg,
            ArtifactKind.TemplatePdf,
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

        return request;
    }
}
