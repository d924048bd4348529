using Flushback.Inspection;
using Flushback.Reports;
using Flushback.Service.Drawings;

namespace Flushback.Service.Artifacts;

/// <summary>Makes the files a caller asks for beside the report of an inspection.</summary>
internal static class InspectionArtifacts
{
    /// <summary>A file.</summary>
    /// <param name="kind">Which; validated.</param>
    /// <param name="wire">The report in the contract's form.</param>
    /// <param name="report">The same report in the core's form.</param>
    /// <param name="source">The drawing as it came in.</param>
    public static Wire.Artifact Make(
        Wire.ArtifactKind kind,
        Wire.InspectReport wire,
        InspectionReport report,
        InspectionSource source
    ) =>
        kind switch
        {
            Wire.ArtifactKind.Text => ArtifactFile.Text(
                kind,
                "report.txt",
                "text/plain",
                InspectionTextReport.Write(wire.Name, report)
            ),
            Wire.ArtifactKind.Html => ArtifactFile.Text(
                kind,
                "report.html",
                "text/html",
                InspectionHtmlReport.Write(wire.Name, report)
            ),
            Wire.ArtifactKind.Json => ArtifactFile.Json(wire),
            Wire.ArtifactKind.CutPathDxf => ArtifactFile.Dxf(
                kind,
                "cut-path.dxf",
                CutPathDrawing.Of(report, source.File)
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not validated."),
        };
}
