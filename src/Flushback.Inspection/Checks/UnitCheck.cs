using Flushback.Dxf;
using Flushback.Geometry;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Whether the unit was guessed, and whether the size suggests another one.</summary>
internal static class UnitCheck
{
    /// <summary>From the smallest part to the largest sheet a knife shop cuts (common practice, no source).</summary>
    private static readonly PlausibleSize Possible = new(10, 4000);

    /// <summary>What such a drawing most likely shows: a knife or its parts (common practice, no source).</summary>
    private static readonly PlausibleSize Likely = new(30, 400);

    public static IEnumerable<InspectionFinding> Of(IEnumerable<DxfIssue> issues, DrawingUnit unit, Box bounds)
    {
        foreach (DxfIssue issue in issues.Where(issue => issue.Code == DxfIssueCodes.UnitFromMeasurement))
        {
            yield return new InspectionFinding(
                InspectionCodes.UnitGuessed,
                Severity.Warning,
                issue.Sentence,
                "Say the unit, or set it in the drawing: a part cut 25.4 times too large or too small is scrap.",
                []
            );
        }

        double size = Math.Max(bounds.WidthMm, bounds.HeightMm);
        if (bounds.MinX > bounds.MaxX || Possible.Holds(size))
        {
            yield break;
        }

        IEnumerable<string> others = UnitPlausibility
            .OtherReadings(size, unit, Likely)
            .Select(reading => $"; {reading}");
        yield return new InspectionFinding(
            InspectionCodes.ImplausibleUnit,
            Severity.Warning,
            $"Read in {UnitPlausibility.NameOf(unit)} the drawing measures {Said.Size(bounds)}{string.Concat(others)}.",
            "Check the unit of the drawing, or say it.",
            [],
            At: bounds.Centre,
            Value: size,
            Limit: size < Possible.LeastMm ? Possible.LeastMm : Possible.MostMm,
            Unit: "mm"
        );
    }
}
