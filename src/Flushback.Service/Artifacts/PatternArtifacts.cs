using Flushback.Dxf;
using Flushback.Dxf.Writing;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Patterns;
using Flushback.Patterns.Fitting;
using Flushback.Patterns.Pairs;
using Flushback.Reports;
using Flushback.Reports.Print;
using Flushback.Reports.Templates;
using Flushback.Service.Drawings;
using Flushback.Service.Mapping;

namespace Flushback.Service.Artifacts;

/// <summary>Makes the files a caller asks for beside a pattern: those of its own, and those of the check of it.</summary>
/// <param name="request">What was asked for; validated.</param>
/// <param name="pattern">The pattern as drawn.</param>
/// <param name="bench">What the bench shows of it.</param>
/// <param name="handle">The knife in its handle, when asked for.</param>
internal sealed class PatternArtifacts(
    Wire.GenerateRequest request,
    DrawnPattern pattern,
    BenchReport bench,
    HandleReport? handle
)
{
    /// <summary>What a fit of the page came to, when asked for.</summary>
    public FittedPattern? Fitted { get; init; }

    /// <summary>Both blades, where there are two.</summary>
    public DrawnPair? Pair { get; init; }

    /// <summary>What the bench shows of the second blade.</summary>
    public BenchReport? SecondBench { get; init; }

    /// <summary>The second blade in its handle, when asked for.</summary>
    public HandleReport? SecondHandle { get; init; }

    private readonly DxfVersion _version = request.DxfVersion.ToVersion();
    private readonly DrawingUnit _unit = request.Unit.ToDrawingUnit() ?? DrawingUnit.Millimetre;

    /// <summary>A file.</summary>
    /// <param name="kind">Which; validated.</param>
    /// <param name="response">The answer so far: what was drawn, and the report.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    public Wire.Artifact Make(Wire.ArtifactKind kind, Wire.GenerateResponse response, CancellationToken cancellation) =>
        kind switch
        {
            Wire.ArtifactKind.PatternDxf => ArtifactFile.Dxf(
                kind,
                "pattern.dxf",
                PatternDxf.Of(pattern, _version, _unit, Pair)
            ),
            Wire.ArtifactKind.CutSheetDxf => ArtifactFile.Dxf(
                kind,
                "cut-sheet.dxf",
                CutSheetDxf.Of(pattern, _version, _unit, cancellation)
            ),
            Wire.ArtifactKind.PatternSvg => ArtifactFile.Text(
                kind,
                "pattern.svg",
                "image/svg+xml",
                PatternSvg.Write(request.Name, pattern)
            ),
            Wire.ArtifactKind.TemplatePdf => ArtifactFile.Pdf(
                kind,
                "template.pdf",
                TemplatePdf.Write(
                    request.Name,
                    pattern,
                    request.Paper == Wire.PaperSize.Letter ? Paper.Letter : Paper.A4,
                    _unit == DrawingUnit.Inch
                )
            ),
            Wire.ArtifactKind.Text => ArtifactFile.Text(
                kind,
                "report.txt",
                "text/plain",
                PatternTextReport.Write(request.Name, pattern, bench, handle, Fitted) + SecondText()
            ),
            Wire.ArtifactKind.Html when Pair is not null => ArtifactFile.Text(
                kind,
                "report.html",
                "text/html",
                PairHtmlReport.Write(request.Name, Pair, bench, handle, SecondBench!, SecondHandle)
            ),
            Wire.ArtifactKind.Json => ArtifactFile.Json(
                new Wire.GenerateResponse
                {
                    Pattern = response.Pattern,
                    Report = response.Report,
                    Fitting = response.Fitting,
                    Second = response.Second,
                }
            ),
            _ => ArtifactMaker.Make(kind, response.Report, bench, handle, Source()),
        };

    private string SecondText() =>
        Pair is null ? "" : PairTextReport.Write(request.Name, Pair, SecondBench!, SecondHandle);

    // As if the caller had handed in the drawing that he gets.
    private KnifeSource Source()
    {
        KnifeSource drawn = PatternSource.Of(pattern);
        return drawn with { File = new DrawingFile(PatternDxf.Of(pattern, _version, _unit, Pair), _unit) };
    }
}
