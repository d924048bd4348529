using Flushback.Inspection;
using Flushback.Inspection.Repair;
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
    /// <param name="copy">The repaired copy, when asked for.</param>
    /// <param name="file">The drawing as it came in.</param>
    public static Wire.Artifact Make(
        Wire.ArtifactKind kind,
        Wire.InspectReport wire,
        InspectionReport report,
        RepairedDrawing? copy,
        DrawingFile file
    ) =>
        kind switch
        {
            Wire.ArtifactKind.Text => ArtifactFile.Text(
                kind,
                "report.txt",
                "text/plain",
                InspectionTextReport.Write(wire.Name, report, copy)
            ),
            Wire.ArtifactKind.Html => ArtifactFile.Text(
                kind,
                "report.html",
                "text/html",
                InspectionHtmlReport.Write(wire.Name, report, copy)
            ),
            Wire.ArtifactKind.Json => ArtifactFile.Json(wire),
            Wire.ArtifactKind.RepairedDxf => ArtifactFile.Dxf(kind, "repaired.dxf", copy!.Bytes),
            Wire.ArtifactKind.CutPathDxf => ArtifactFile.Dxf(kind, "cut-path.dxf", CutPathDrawing.Of(report, file)),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not validated."),
        };
}
