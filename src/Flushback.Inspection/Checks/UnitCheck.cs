using Flushback.Dxf;
using Flushback.Geometry;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Whether the unit was guessed, and whether the size suggests another one.</summary>
internal static class UnitCheck
{
    /// <summary>Nothing a knife shop cuts is smaller than this (common practice, no source).</summary>
    private const double SmallestMm = 10;

    /// <summary>Nor larger than a large sheet of steel (common practice, no source).</summary>
    private const double LargestMm = 4000;

    /// <summary>Units that drawings for a shop are made in.</summary>
    private static readonly DrawingUnit[] Usual =
    [
        DrawingUnit.Millimetre,
        DrawingUnit.Inch,
        DrawingUnit.Centimetre,
        DrawingUnit.Metre,
        DrawingUnit.Thou,
    ];

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
        if (bounds.MinX > bounds.MaxX || (size >= SmallestMm && size <= LargestMm))
        {
            yield break;
        }

        yield return new InspectionFinding(
            InspectionCodes.ImplausibleUnit,
            Severity.Warning,
            $"Read in {Name(unit)} the drawing is {Said.Size(bounds)} large{Instead(unit, bounds, size)}.",
            "Check the unit of the drawing, or say it.",
            [],
            At: bounds.Centre,
            Value: size,
            Limit: size < SmallestMm ? SmallestMm : LargestMm,
            Unit: "mm"
        );
    }

    private static string Instead(DrawingUnit unit, Box bounds, double size)
    {
        foreach (DrawingUnit other in Usual)
        {
            double factor = other.Millimetres() / unit.Millimetres();
            if (size * factor is >= SmallestMm and <= LargestMm)
            {
                Box scaled = new(0, 0, bounds.WidthMm * factor, bounds.HeightMm * factor);
                return $"; in {Name(other)} it would be {Said.Size(scaled)}";
            }
        }

        return "";
    }

    /// <summary>A unit as a sentence names it.</summary>
    public static string Name(DrawingUnit unit) =>
        unit switch
        {
            DrawingUnit.Millimetre => "millimetres",
            DrawingUnit.Inch => "inches",
            DrawingUnit.Centimetre => "centimetres",
            DrawingUnit.Metre => "metres",
            DrawingUnit.Thou => "thousandths of an inch",
            _ => $"the unit {unit}",
        };
}
