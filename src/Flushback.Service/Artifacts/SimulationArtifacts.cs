using Flushback.Mechanism.Passes;
using Flushback.Reports;
using Flushback.Service.Drawings;

namespace Flushback.Service.Artifacts;

/// <summary>Makes the files a caller asks for beside the report of a simulation.</summary>
internal static class SimulationArtifacts
{
    /// <summary>A file.</summary>
    /// <param name="kind">Which; validated.</param>
    /// <param name="wire">The report in the contract's form.</param>
    /// <param name="simulation">The same in the core's form.</param>
    /// <param name="source">How the knife came in.</param>
    public static Wire.Artifact Make(
        Wire.ArtifactKind kind,
        Wire.SimulateReport wire,
        Simulation simulation,
        KnifeSource source
    ) =>
        kind switch
        {
            Wire.ArtifactKind.Text => ArtifactFile.Text(
                kind,
                "passes.txt",
                "text/plain",
                SimulationTextReport.Write(wire.Name, simulation)
            ),
            Wire.ArtifactKind.Html => ArtifactFile.Text(
                kind,
                "passes.html",
                "text/html",
                SimulationHtmlReport.Write(wire.Name, simulation)
            ),
            Wire.ArtifactKind.Json => ArtifactFile.Json(wire),
            Wire.ArtifactKind.Dxf => ArtifactFile.Dxf(kind, "passes.dxf", PassDrawing.Of(simulation, source)),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not validated."),
        };
}
