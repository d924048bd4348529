using Flushback.Mechanism.Tolerances;
using Flushback.Reports;

namespace Flushback.Service.Artifacts;

/// <summary>Makes the files a caller asks for beside the report of a tolerance study.</summary>
internal static class StudyArtifacts
{
    /// <summary>A file.</summary>
    /// <param name="kind">Which; validated.</param>
    /// <param name="wire">The report in the contract's form.</param>
    /// <param name="report">The same in the core's form.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    public static Wire.Artifact Make(
        Wire.ArtifactKind kind,
        Wire.StudyReport wire,
        ToleranceReport report,
        CancellationToken cancellation
    ) =>
        kind switch
        {
            Wire.ArtifactKind.Text => ArtifactFile.Text(
                kind,
                "tolerance.txt",
                "text/plain",
                ToleranceTextReport.Write(wire.Name, report)
            ),
            Wire.ArtifactKind.Html => ArtifactFile.Text(
                kind,
                "tolerance.html",
                "text/html",
                ToleranceHtmlReport.Write(wire.Name, report)
            ),
            Wire.ArtifactKind.Json => ArtifactFile.Json(wire),
            Wire.ArtifactKind.SpreadCsv => ArtifactFile.Text(
                kind,
                "spread.csv",
                "text/csv",
                SpreadCsv.Write(report, cancellation)
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not validated."),
        };
}
