using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Islands within holes, and layers with more than one part.</summary>
internal static class NestingFindings
{
    public static IEnumerable<InspectionFinding> Of(NestedContours nested) =>
        Islands(nested).Concat(LayersWithSeveralParts(nested));

    private static IEnumerable<InspectionFinding> Islands(NestedContours nested)
    {
        foreach (int i in nested.Outer.Where(i => nested.ParentOf(i) >= 0))
        {
            CutContour island = nested.Contours[i];
            yield return new InspectionFinding(
                InspectionCodes.NestedWrongly,
                Severity.Warning,
                $"{Sentence.Begin(island.Label)} lies within a hole, {nested.Contours[nested.ParentOf(i)].Label}: it is another part, or dirt.",
                "Delete it, or draw it beside the part: it would fall out with what is cut from the hole.",
                island.Handles,
                island.Layer,
                island.Outline.Bounds.Centre
            );
        }
    }

    private static IEnumerable<InspectionFinding> LayersWithSeveralParts(NestedContours nested) =>
        nested
            .Outer.Select(i => nested.Contours[i])
            .GroupBy(contour => contour.Layer)
            .Where(parts => parts.Skip(1).Any())
            .Select(parts => new InspectionFinding(
                InspectionCodes.SeveralParts,
                Severity.Note,
                $"Layer {parts.Key} holds {Said.Whole(parts.Count())} parts; the second is {parts.ElementAt(1).Label}.",
                "Nothing if a sheet of parts is meant; otherwise look for what does not belong there.",
                [.. parts.Select(part => part.Handles[0])],
                parts.Key,
                parts.ElementAt(1).Outline.Bounds.Centre,
                parts.Count(),
                1
            ));
}
