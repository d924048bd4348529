using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Contours too small to be meant.</summary>
internal static class TinyFeatures
{
    public static IEnumerable<InspectionFinding> Of(ImmutableArray<CutContour> contours, double limitMm)
    {
        foreach (CutContour contour in contours)
        {
            Box box = contour.Outline.Bounds;
            double size = Math.Max(box.WidthMm, box.HeightMm);
            if (size < limitMm - CutTolerances.TouchingMm)
            {
                yield return new InspectionFinding(
                    InspectionCodes.TinyFeature,
                    Severity.Warning,
                    $"{Sentence.Begin(contour.Label)} at {Said.At(box.Centre)} measures {Said.Length(size)} at most.",
                    "Delete it if it is dirt; a hole this small is marked rather than cut.",
                    contour.Handles,
                    contour.Layer,
                    box.Centre,
                    size,
                    limitMm,
                    "mm"
                );
            }
        }
    }
}
