using System.Globalization;
using Flushback.Geometry;
using Flushback.Service.Errors;

namespace Flushback.Service.Drawings;

/// <summary>Tells from where a circle lies which pin it is.</summary>
internal sealed class PinFinder(LayerReader layers, LayerRoles roles, Violations violations)
{
    // Circles with the same middle are one pin: a hole and the pin in it, or a hole drawn on two layers.
    private const double SamePinMm = 0.01;

    /// <summary>The blade pin: the circle inside the blade's outline.</summary>
    /// <returns>The pin; null when there is none or more than one, which is then among the violations.</returns>
    public Circle? Pivot(Outline blade)
    {
        // A pin of the handle may lie over the blade: what is on the blade's own layer goes first.
        List<Circle> inside = Inside(blade, layers.Circles(roles.Blade));
        if (inside.Count == 0)
        {
            inside = Inside(blade, layers.Circles(roles.Pins));
        }

        if (inside.Count == 1)
        {
            return inside[0];
        }

        if (inside.Count == 0)
        {
            violations.Add(DrawingReader.DxfField, "PIVOT_MISSING", WhatIsMissing(roles.Blade, "pivot"));
        }
        else
        {
            violations.Add(
                DrawingReader.DxfField,
                "PIVOT_AMBIGUOUS",
                $"The blade's outline holds {inside.Count} circles, at {string.Join(" and at ", inside.Take(3).Select(Place))}; leave only the pivot on layers '{roles.Blade.Layer}' and '{roles.Pins.Layer}'."
            );
        }

        return null;
    }

    /// <summary>The spring's pins: of the circles inside its outline the nearest to the pivot and the farthest.</summary>
    /// <returns>The pins; null where there is none, and a missing centre pin is then among the violations.</returns>
    public (Circle? Centre, Circle? Rear) SpringPins(Outline spring, Circle pivot)
    {
        List<Circle> inside =
        [
            .. Inside(spring, layers.Circles(roles.Spring).Concat(layers.Circles(roles.Pins)))
                .OrderBy(circle => circle.Centre.DistanceTo(pivot.Centre)),
        ];
        if (inside.Count == 0)
        {
            violations.Add(DrawingReader.DxfField, "CENTRE_PIN_MISSING", WhatIsMissing(roles.Spring, "centre pin"));
            return (null, null);
        }

        return (inside[0], inside.Count > 1 ? inside[^1] : null);
    }

    private static List<Circle> Inside(Outline part, IEnumerable<Circle> circles) =>
        Distinct(circles.Where(circle => part.Contains(circle.Centre)));

    private static List<Circle> Distinct(IEnumerable<Circle> circles)
    {
        List<Circle> distinct = [];
        foreach (Circle circle in circles.OrderBy(circle => circle.RadiusMm))
        {
            if (!distinct.Exists(other => other.Centre.IsWithin(SamePinMm, circle.Centre)))
            {
                distinct.Add(circle);
            }
        }

        return distinct;
    }

    private string WhatIsMissing(LayerRole part, string pin)
    {
        int elsewhere = layers.Circles(part).Concat(layers.Circles(roles.Pins)).Count();
        string found =
            elsewhere == 0
                ? "there is no circle"
                : string.Create(CultureInfo.InvariantCulture, $"none of the {elsewhere} circles lies inside it");
        return $"The {part.Part} has no {pin}: on layers '{part.Layer}' and '{roles.Pins.Layer}' {found}; {layers.LayersInWords()}: draw the pin as a circle inside the {part.Part}'s outline or name another layer for the pins.";
    }

    private static string Place(Circle circle) =>
        string.Create(CultureInfo.InvariantCulture, $"({circle.Centre.X:0.###}, {circle.Centre.Y:0.###}) mm");
}
