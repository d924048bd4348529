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
    private static readonly PlausibleSize Folder = new(LeastMm: 30, MostMm: 400);

    /// <summary>Gathers a knife of a size that none has.</summary>
    /// <param name="knife">The knife in millimetres.</param>
    /// <param name="unit">The unit it was read in.</param>
    /// <param name="isUnitGiven">True when the caller names the unit, and so answers for the size.</param>
    /// <param name="violations">Gathers what is wrong.</param>
    public static void Check(DrawnKnife knife, DrawingUnit unit, bool isUnitGiven, Violations violations)
    {
        double lengthMm = OpenLengthMm(knife);
        if (!isUnitGiven && !Folder.Holds(lengthMm))
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
        if (!Folder.Holds(lengthMm))
        {
            violations.Add(
                "knife.outlines",
                "WRONG_UNIT",
                Sentence(
                    $"The outlines make a knife {UnitPlausibility.InWords(lengthMm)} long when open, but {Range}; give them in millimetres."
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
        // A scale that no unit of the request stands for would be no help here.
        IEnumerable<string> others = UnitPlausibility
            .OtherReadings(lengthMm, unit, Folder)
            .Where(reading => reading.Unit is not null)
            .Select(reading => reading.ToString());
        string otherReadings = string.Join(" and ", others.DefaultIfEmpty("no other unit makes it one"));
        return Sentence(
            $"Read in {UnitPlausibility.NameOf(unit)}, the drawing makes a knife {UnitPlausibility.InWords(lengthMm)} long when open, but {Range}; {otherReadings}: say which unit the drawing is in, which settles it."
        );
    }

    private static string Range => Sentence($"a folding knife is {Folder.LeastMm} to {Folder.MostMm} mm long");

    private static string Sentence(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
