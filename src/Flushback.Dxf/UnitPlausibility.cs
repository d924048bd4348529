using System.Collections.Immutable;
using System.Globalization;
using Flushback.Geometry;

namespace Flushback.Dxf;

/// <summary>Tells a drawing whose numbers were meant in another unit by its size.</summary>
/// <remarks>
/// Nothing is converted by this: a size out of all reason is said, with what it would be in the units that drawings are
/// made in.
/// </remarks>
public static class UnitPlausibility
{
    // Points of 72 to the inch are those of page descriptions (PostScript, PDF), pixels of 96 those of CSS and SVG.
    private static readonly (DrawingUnit? Unit, string Name, double Mm)[] Candidates =
    [
        (DrawingUnit.Millimetre, "millimetres", 1),
        (DrawingUnit.Inch, "inches", DrawingUnits.InchMm),
        (DrawingUnit.Centimetre, "centimetres", 10),
        (DrawingUnit.Thou, "thousandths of an inch", DrawingUnits.InchMm / 1000),
        (DrawingUnit.Metre, "metres", 1000),
        (null, "points of 1/72 inch", DrawingUnits.InchMm / 72),
        (null, "pixels of 1/96 inch", DrawingUnits.InchMm / 96),
    ];

    /// <summary>The units in which a length would be plausible, other than the one it was read in.</summary>
    /// <param name="lengthMm">The length as it was read, in millimetres.</param>
    /// <param name="unit">The unit it was read in.</param>
    /// <param name="size">What is plausible.</param>
    public static ImmutableArray<UnitReading> OtherReadings(double lengthMm, DrawingUnit unit, PlausibleSize size)
    {
        double inDrawing = lengthMm / unit.Millimetres();
        return
        [
            .. Candidates
                .Where(candidate => candidate.Unit != unit)
                .Select(candidate => new UnitReading(candidate.Unit, candidate.Name, inDrawing * candidate.Mm))
                .Where(reading => size.Holds(reading.LengthMm)),
        ];
    }

    /// <summary>The notice that a drawing is larger or smaller than it can be; null when its size is plausible.</summary>
    /// <param name="bounds">Box about what is to be judged, in millimetres.</param>
    /// <param name="unit">The unit the drawing was read in.</param>
    /// <param name="size">What its longer side can be.</param>
    public static DxfIssue? Doubt(Box bounds, DrawingUnit unit, PlausibleSize size)
    {
        double longerMm = Math.Max(bounds.WidthMm, bounds.HeightMm);
        if (bounds.MinX > bounds.MaxX || size.Holds(longerMm))
        {
            return null;
        }

        IEnumerable<string> others = OtherReadings(longerMm, unit, size).Select(reading => reading.ToString());
        string otherReadings = string.Join(" and ", others.DefaultIfEmpty("no other unit makes it that"));
        return new DxfIssue(
            DxfIssueCodes.UnitDoubtful,
            DxfIssueKind.Notice,
            Invariant(
                $"Read in {NameOf(unit)}, the drawing is {InWords(longerMm)} along its longer side, and {size.LeastMm:#,0.###} to {size.MostMm:#,0.###} mm was to be expected; {otherReadings}: check its size, and give the unit or scale the drawing."
            )
        );
    }

    /// <summary>The name of a unit in the plural.</summary>
    public static string NameOf(DrawingUnit unit) =>
        Array.Find(Candidates, known => known.Unit == unit).Name ?? $"the unit '{unit}'";

    /// <summary>A length in millimetres and in inches.</summary>
    public static string InWords(double mm) => Invariant($"{mm:#,0.###} mm ({mm / DrawingUnits.InchMm:#,0.###} in)");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
