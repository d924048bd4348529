using System.Globalization;
using Flushback.Dxf;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Service.Errors;

namespace Flushback.Service.Drawings;

/// <summary>Finds a drawing read in the wrong unit from the size of the knife it makes.</summary>
internal static class KnifeSize
{
    // Shortest and longest open folding knife that is taken for one: common practice, no source.
    private const double ShortestMm = 30;
    private const double LongestMm = 400;

    private static readonly (DrawingUnit Unit, string Name)[] Units =
    [
        (DrawingUnit.Millimetre, "millimetres"),
        (DrawingUnit.Inch, "inches"),
        (DrawingUnit.Centimetre, "centimetres"),
        (DrawingUnit.Thou, "thousandths of an inch"),
        (DrawingUnit.Metre, "metres"),
    ];

    /// <summary>Gathers a knife of a size that none has.</summary>
    /// <param name="knife">The knife in millimetres.</param>
    /// <param name="unit">The unit it was read in.</param>
    /// <param name="isUnitGiven">True when the caller names the unit, and so answers for the size.</param>
    /// <param name="violations">Gathers what is wrong.</param>
    public static void Check(DrawnKnife knife, DrawingUnit unit, bool isUnitGiven, Violations violations)
    {
        double lengthMm = OpenLengthMm(knife);
        if (!isUnitGiven && lengthMm is < ShortestMm or > LongestMm)
        {
            violations.Add(DrawingReader.UnitField, "WRONG_UNIT", Refusal(lengthMm, unit));
        }
    }

    /// <summary>Gathers a knife of a size that none has, given as outlines, which are always in millimetres.</summary>
    /// <param name="knife">The knife in millimetres.</param>
    /// <param name="violations">Gathers what is wrong.</param>
    public static void Check(DrawnKnife knife, Violations violations)
    {
        double lengthMm = OpenLengthMm(knife);
        if (lengthMm is < ShortestMm or > LongestMm)
        {
            violations.Add(
                "knife.outlines",
                "WRONG_UNIT",
                Sentence(
                    $"The outlines make a knife {InWords(lengthMm)} long when open, but {Range}; give them in millimetres."
                )
            );
        }
    }

    /// <summary>Length of the open knife, whatever the angle at which the blade is drawn, in millimetres.</summary>
    private static double OpenLengthMm(DrawnKnife knife) =>
        FarthestMm(knife.Blade, knife.Pivot.Centre) + FarthestMm(knife.Spring, knife.Pivot.Centre);

    private static double FarthestMm(Outline outline, Point from) =>
        outline.Edges.Max(edge => edge.Start.DistanceTo(from));

    private static string Refusal(double lengthMm, DrawingUnit unit)
    {
        double inDrawing = lengthMm / unit.Millimetres();
        IEnumerable<string> others = Units
            .Where(other => other.Unit != unit)
            .Select(other => (other.Name, LengthMm: inDrawing * other.Unit.Millimetres()))
            .Where(other => other.LengthMm is >= ShortestMm and <= LongestMm)
            .Select(other => Sentence($"in {other.Name} it would be {InWords(other.LengthMm)}"));
        string otherReadings = string.Join(" and ", others.DefaultIfEmpty("no other unit makes it one"));
        return Sentence(
            $"Read in {NameOf(unit)}, the drawing makes a knife {InWords(lengthMm)} long when open, but {Range}; {otherReadings}: say which unit the drawing is in, which settles it."
        );
    }

    private static string Range => Sentence($"a folding knife is {ShortestMm} to {LongestMm} mm long");

    private static string NameOf(DrawingUnit unit) =>
        Array.Find(Units, known => known.Unit == unit).Name ?? $"the unit '{unit}'";

    private static string InWords(double mm) => Sentence($"{mm:#,0.###} mm ({mm / 25.4:#,0.###} in)");

    private static string Sentence(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
