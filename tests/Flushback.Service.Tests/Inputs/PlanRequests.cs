using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Service.Tests.Inputs;

/// <summary>Requests for plans of knives of the catalogue.</summary>
internal static class PlanRequests
{
    /// <summary>The wagtail with metal to take off at both stops.</summary>
    public static KnifeDesign ReadsHigh { get; } =
        KnifeCatalogue.Wagtail with
        {
            Tang = new TangDesign { HalfStopReadingMm = 0.25, ClosedReadingMm = 0.55 },
        };

    /// <summary>The wagtail closed far too low, which no pass mends.</summary>
    public static KnifeDesign ReadsLow { get; } =
        KnifeCatalogue.Wagtail with
        {
            Tang = new TangDesign { ClosedReadingMm = -0.6 },
        };

    /// <summary>A plan of a knife that reads high.</summary>
    public static Wire.PlanRequest High(params Wire.ArtifactKind[] artifacts) =>
        Of(Requests.Outlines(ReadsHigh.ToDrawn()), artifacts);

    /// <summary>A plan of a knife that reads high, as a drawing in any placement.</summary>
    public static Wire.PlanRequest HighDrawing(
        RigidMotion placement,
        double bladeAngleDeg,
        int units,
        double scale,
        params Wire.ArtifactKind[] artifacts
    )
    {
        DrawnKnife drawn = ReadsHigh.ToDrawn(placement, Angle.FromDegrees(bladeAngleDeg));
        Wire.PlanRequest request = Of(Requests.Drawing(LooseDrawing.Of(drawn, units, scale)), artifacts);
        request.Knife.DrawnBladeAngleDeg = bladeAngleDeg;
        return request;
    }

    /// <summary>A plan of the knife of another request.</summary>
    public static Wire.PlanRequest Of(Wire.CheckRequest check, params Wire.ArtifactKind[] artifacts) =>
        new()
        {
            Name = check.Name,
            Knife = check.Knife,
            Artifacts = { artifacts },
        };
}
