using System.Collections.Immutable;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Widths;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Thin webs of metal: between two contours of a part, or between two stretches of one.</summary>
/// <remarks>What counts as a web is what <see cref="WidthSearch"/> finds narrow in the metal.</remarks>
internal static class Webs
{
    /// <summary>The thinnest web of a part, and a finding for each that is thinner than the limit.</summary>
    public static (WebMeasure? Thinnest, ImmutableArray<InspectionFinding> Findings) Of(
        MetalPart part,
        double limitMm,
        CancellationToken ct
    )
    {
        if (!part.IsSound)
        {
            return (null, []);
        }

        Border metal = new(part.Loops);
        (Width? least, ImmutableArray<Width> below) = WidthSearch.In(metal, limitMm, ct);
        return (
            least is { } thinnest ? new WebMeasure(thinnest.Mm, thinnest.From, thinnest.To) : null,
            [.. NarrowPlaces.OnceEach(below, limitMm).Select(web => FindingOf(web, metal, limitMm))]
        );
    }

    private static InspectionFinding FindingOf(Width web, Border metal, double limitMm)
    {
        CutContour one = metal.ContourOf(web.FromEdge);
        CutContour other = metal.ContourOf(web.ToEdge);
        string between = ReferenceEquals(one, other) ? $"two sides of {one.Label}" : $"{one.Label} and {other.Label}";
        return new InspectionFinding(
            InspectionCodes.ThinWeb,
            Severity.Warning,
            $"Only {Said.Length(web.Mm)} of metal stand between {between}, from {Said.At(web.From)} to {Said.At(web.To)}.",
            "Move the contours apart: a thin web warps in the heat of cutting and hardening, and breaks first.",
            metal.HandlesOf(web),
            one.Layer,
            web.Middle,
            web.Mm,
            limitMm,
            "mm"
        );
    }
}
