using Flushback.Mechanism.Plans;
using Flushback.Reports;
using Flushback.Service.Drawings;

namespace Flushback.Service.Artifacts;

/// <summary>Makes the files a caller asks for beside the report of a plan.</summary>
internal static class PlanArtifacts
{
    /// <summary>A file.</summary>
    /// <param name="kind">Which; validated.</param>
    /// <param name="wire">The report in the contract's form.</param>
    /// <param name="plan">The same in the core's form.</param>
    /// <param name="source">How the knife came in.</param>
    public static Wire.Artifact Make(
        Wire.ArtifactKind kind,
        Wire.PlanReport wire,
        PlanReport plan,
        KnifeSource source
    ) =>
        kind switch
        {
            Wire.ArtifactKind.Text => ArtifactFile.Text(
                kind,
                "plan.txt",
                "text/plain",
                PlanTextReport.Write(wire.Name, plan)
            ),
            Wire.ArtifactKind.Html => ArtifactFile.Text(
                kind,
                "plan.html",
                "text/html",
                PlanHtmlReport.Write(wire.Name, plan)
            ),
            Wire.ArtifactKind.Json => ArtifactFile.Json(wire, "plan.json"),
            Wire.ArtifactKind.CorrectedDxf => ArtifactFile.Dxf(
                kind,
                "corrected.dxf",
                CorrectedDrawing.Of(plan, wire.Layers, source)
            ),
            Wire.ArtifactKind.CardHtml => ArtifactFile.Text(
                kind,
                "card.html",
                "text/html",
                PlanCardHtml.Write(wire.Name, plan)
            ),
            Wire.ArtifactKind.CardPdf => ArtifactFile.Pdf(kind, "card.pdf", PlanCardPdf.Write(wire.Name, plan)),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not validated."),
        };
}
