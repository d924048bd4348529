using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Reports;
using Flushback.Service.Drawings;

namespace Flushback.Service.Artifacts;

/// <summary>Makes the files a caller asks for beside the report of a check.</summary>
internal static class ArtifactMaker
{
    /// <summary>A file.</summary>
    /// <param name="kind">Which; validated.</param>
    /// <param name="report">The report in the contract's form.</param>
    /// <param name="bench">The same report in the core's form.</param>
    /// <param name="handle">The knife in its handle, when asked for.</param>
    /// <param name="source">How the knife came in.</param>
    public static Wire.Artifact Make(
        Wire.ArtifactKind kind,
        Wire.CheckReport report,
        BenchReport bench,
        HandleReport? handle,
        KnifeSource source
    ) =>
        kind switch
        {
            Wire.ArtifactKind.Text => ArtifactFile.Text(
                kind,
                "report.txt",
                "text/plain",
                TextReport.Write(report.Name, bench, source.Repairs, handle)
            ),
            Wire.ArtifactKind.Html => ArtifactFile.Text(
                kind,
                "report.html",
                "text/html",
                HtmlReport.Write(report.Name, bench, source.Repairs, handle)
            ),
            Wire.ArtifactKind.Csv => ArtifactFile.Text(kind, "lift-curve.csv", "text/csv", LiftCurveCsv.Write(bench)),
            Wire.ArtifactKind.HandleCsv when handle is not null => ArtifactFile.Text(
                kind,
                "handle-curve.csv",
                "text/csv",
                HandleCurveCsv.Write(handle)
            ),
            Wire.ArtifactKind.Json => ArtifactFile.Json(report),
            Wire.ArtifactKind.Dxf => ArtifactFile.Dxf(kind, "contacts.dxf", ContactDrawing.Of(bench, source)),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not validated."),
        };
}
