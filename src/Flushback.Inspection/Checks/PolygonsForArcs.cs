using System.Collections.Immutable;
using Flushback.Dxf.Refitting;
using Flushback.Geometry;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Short lines that stand for an arc or a circle.</summary>
internal static class PolygonsForArcs
{
    public static IEnumerable<InspectionFinding> Of(ImmutableArray<CutContour> contours, RefitTolerances tolerances) =>
        contours
            .Where(contour => contour.Circle is null)
            .SelectMany(contour =>
                ArcRefitting
                    .Of(contour.Outline, tolerances)
                    .Refits.Where(refit => AreLines(refit, contour.Outline.Edges))
                    .Select(refit => FindingOf(refit, contour, tolerances))
            );

    /// <summary>Whether a run that is one arc holds lines; one of arcs alone is no polygon.</summary>
    public static bool AreLines(Refit refit, ImmutableArray<Edge> edges) =>
        Enumerable.Range(refit.FirstEdge, refit.EdgeCount).Any(edge => !edges[edge % edges.Length].IsArc);

    private static InspectionFinding FindingOf(Refit refit, CutContour contour, RefitTolerances tolerances)
    {
        bool isCircle = refit.From == refit.To;
        string what = isCircle
            ? $"a circle of {Said.Length(refit.Circle.DiameterMm)} at {Said.At(refit.Circle.Centre)}"
            : $"an arc of radius {Said.Length(refit.Circle.RadiusMm)} from {Said.At(refit.From)} to {Said.At(refit.To)}";
        return new InspectionFinding(
            InspectionCodes.PolygonForArc,
            Severity.Warning,
            $"{Sentence.Begin(contour.Label)} draws {what} as {Said.Count(refit.EdgeCount, "edge", "edges")}, which lie "
                + $"{Said.Length(refit.DeviationMm)} from it at most.",
            "Send the repaired drawing, or draw the arc: the cut shows every corner, and a hole of corners is too small for its pin.",
            [.. EdgesOf(refit, contour).Select(edge => contour.EdgeHandles[edge]).Distinct()],
            contour.Layer,
            isCircle ? refit.Circle.Centre : refit.From,
            refit.DeviationMm,
            tolerances.ChordMm,
            "mm"
        );
    }

    private static IEnumerable<int> EdgesOf(Refit refit, CutContour contour) =>
        Enumerable.Range(refit.FirstEdge, refit.EdgeCount).Select(edge => edge % contour.Outline.Edges.Length);
}
