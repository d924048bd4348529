using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Contours that are drawn on two cut layers.</summary>
internal static class CopyFindings
{
    public static InspectionFinding Of(CutContour original, CutContour copy) =>
        new(
            InspectionCodes.Duplicate,
            Severity.Warning,
            $"{Sentence.Begin(copy.Label)} is a second copy of {original.Label}.",
            "Delete one of the two, or name only one of the layers as cut: it would be cut twice.",
            [.. original.Handles, .. copy.Handles],
            copy.Layer,
            copy.Outline.Bounds.Centre
        );
}
