using Flushback.Geometry;

namespace Flushback.Dxf.Reading;

/// <summary>Which unit a drawing is in, and on whose word.</summary>
/// <remarks>
/// The caller's word first, then <c>$INSUNITS</c>, then <c>$MEASUREMENT</c>, which only tells inch from metric and is
/// therefore said aloud. Nothing is guessed from the size of the drawing.
/// </remarks>
internal static class UnitChoice
{
    /// <summary>The unit, or null when nobody says.</summary>
    public static DrawingUnit? Of(HeaderVariables header, DrawingUnit? asked) =>
        asked ?? Stated(header) ?? FromMeasurement(header);

    /// <summary>Says on whose word the unit was taken where that needs saying.</summary>
    /// <param name="header">The file's header.</param>
    /// <param name="asked">The caller's unit.</param>
    /// <param name="bounds">Box of everything drawn: in millimetres by the unit chosen, in bare units when there is none.</param>
    /// <param name="log">Where to say it.</param>
    public static void Explain(HeaderVariables header, DrawingUnit? asked, Box bounds, ReadingLog log)
    {
        if (asked is { } unit)
        {
            if ((Stated(header) ?? FromMeasurement(header)) is { } other && other != unit)
            {
                Notice(
                    log,
                    DxfIssueCodes.UnitOverridden,
                    $"The drawing says its unit is {Name(other)}; it was read in {Name(unit)} as asked."
                );
            }
        }
        else if (Stated(header) is null)
        {
            if (FromMeasurement(header) is { } system)
            {
                Notice(
                    log,
                    DxfIssueCodes.UnitFromMeasurement,
                    $"The drawing states no unit ($INSUNITS); its $MEASUREMENT says {(system == DrawingUnit.Inch ? "inch" : "metric")}, "
                        + $"so it was read in {Name(system)} and is {SizeBothWays(bounds, 1)} large: give the unit if that is wrong."
                );
            }
            else
            {
                log.Error(
                    DxfIssueCodes.UnitMissing,
                    $"The drawing does not say its unit{Unknown(header)}: it is {SizeBothWays(bounds, 1)} large if drawn in millimetres and "
                        + $"{SizeBothWays(bounds, DrawingUnit.Inch.Millimetres())} if drawn in inches; say which, or set the unit in the drawing."
                );
            }
        }
    }

    private static DrawingUnit? Stated(HeaderVariables header) =>
        header.InsUnits is { } value and > 0 && Enum.IsDefined((DrawingUnit)value) ? (DrawingUnit)value : null;

    private static DrawingUnit? FromMeasurement(HeaderVariables header) =>
        header.Measurement switch
        {
            0 => DrawingUnit.Inch,
            1 => DrawingUnit.Millimetre,
            _ => null,
        };

    private static string Unknown(HeaderVariables header) =>
        header.InsUnits is { } value and not 0 ? $" ($INSUNITS is {Wording.Whole(value)}, which is no unit)" : "";

    private static string SizeBothWays(Box bounds, double factor)
    {
        double width = bounds.MinX <= bounds.MaxX ? bounds.WidthMm * factor : 0;
        double height = bounds.MinX <= bounds.MaxX ? bounds.HeightMm * factor : 0;
        double inch = DrawingUnit.Inch.Millimetres();
        return $"{Wording.Size(width, height, "mm")} ({Wording.Size(width / inch, height / inch, "in")})";
    }

    // The enum's names read as words in a sentence once split: SurveyFoot, survey foot.
    private static string Name(DrawingUnit unit) =>
        string.Concat(unit.ToString().Select((letter, i) => i > 0 && char.IsUpper(letter) ? $" {letter}" : $"{letter}"))
            .ToLowerInvariant();

    private static void Notice(ReadingLog log, string code, string sentence) =>
        log.Add(new DxfIssue(code, DxfIssueKind.Notice, sentence));
}
