using System.Globalization;
using Flushback.Service.Errors;
using Flushback.Service.Limits;

namespace Flushback.Service.Validation;

/// <summary>What must be there for a knife to be read at all.</summary>
internal static class KnifeRules
{
    private const double LeastBladeAngleDeg = -30;
    private const double LargestBladeAngleDeg = 210;

    // A turn either way and back: more is a slip of the unit.
    private const double LargestDirectionDeg = 720;

    /// <summary>Gathers what is missing or cannot be.</summary>
    public static void Check(Wire.Knife? knife, ServiceLimits limits, Violations violations)
    {
        FieldPath path = new(null, "knife");
        if (knife is null || knife.SourceCase == Wire.Knife.SourceOneofCase.None)
        {
            violations.Add(
                $"{path}",
                "MISSING",
                "The request holds no knife; give outlines of the blade and the spring, or a drawing."
            );
            return;
        }

        if (knife.Outlines is { } outlines)
        {
            CheckOutlines(outlines, path.Of("outlines"), violations);
        }
        else
        {
            DrawingRules.Check(knife.Drawing, path.Of("drawing"), limits, violations);
        }

        Ranges ranges = new(violations);
        ranges.Check(
            path.Of("drawn_blade_angle_deg"),
            knife.HasDrawnBladeAngleDeg ? knife.DrawnBladeAngleDeg : null,
            LeastBladeAngleDeg,
            LargestBladeAngleDeg
        );
        ranges.Check(
            path.Of("handle_axis_deg"),
            knife.HasHandleAxisDeg ? knife.HandleAxisDeg : null,
            -LargestDirectionDeg,
            LargestDirectionDeg
        );
        for (int i = 0; i < knife.FaceOverrides.Count; i++)
        {
            CheckOverride(knife.FaceOverrides[i], path.Of("face_overrides", i), violations);
        }
    }

    private static void CheckOutlines(Wire.KnifeOutlines outlines, FieldPath path, Violations violations)
    {
        CheckOutline(outlines.Blade, path.Of("blade"), "The blade", violations);
        CheckOutline(outlines.Spring, path.Of("spring"), "The spring", violations);
        if (outlines.Handle is { } handle)
        {
            CheckOutline(handle, path.Of("handle"), "The handle", violations);
        }

        CheckPin(outlines.Pivot, path.Of("pivot"), "The blade", "pivot", violations);
        CheckPin(outlines.CentrePin, path.Of("centre_pin"), "The spring", "centre pin", violations);
        if (outlines.RearPin is { } rear)
        {
            CheckPin(rear, path.Of("rear_pin"), "The spring", "rear pin", violations);
        }
    }

    private static void CheckOutline(Wire.Outline? outline, FieldPath path, string part, Violations violations)
    {
        int vertices = outline?.Vertices.Count ?? 0;
        if (vertices == 0)
        {
            violations.Add($"{path}", "MISSING", $"{part} has no outline; give its vertices in order.");
        }
        else if (vertices == 1)
        {
            violations.Add(
                $"{path.Of("vertices")}",
                "TOO_FEW_VERTICES",
                $"{part}'s outline has a single vertex; give at least two, joined by lines or arcs."
            );
        }
    }

    private static void CheckPin(Wire.Circle? pin, FieldPath path, string part, string pinName, Violations violations)
    {
        if (pin?.Centre is null)
        {
            violations.Add(
                $"{(pin is null ? path : path.Of("centre"))}",
                "MISSING",
                $"{part} has no {pinName}; give the centre and the diameter of the hole."
            );
        }

        if (pin is not null && pin.DiameterMm <= 0)
        {
            violations.Add(
                $"{path.Of("diameter_mm")}",
                "OUT_OF_RANGE",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The {pinName}'s diameter is {pin.DiameterMm} mm, but must be above zero."
                )
            );
        }
    }

    private static void CheckOverride(Wire.FaceOverride face, FieldPath path, Violations violations)
    {
        if (face.Near is null)
        {
            violations.Add(
                $"{path.Of("near")}",
                "MISSING",
                $"{path} does not say where its face is; give a point on or next to the edge."
            );
        }

        bool named = face.FaceCase switch
        {
            Wire.FaceOverride.FaceOneofCase.BladeFace => face.BladeFace != Wire.BladeFace.Unspecified,
            Wire.FaceOverride.FaceOneofCase.SpringFace => face.SpringFace != Wire.SpringFace.Unspecified,
            _ => false,
        };
        if (!named)
        {
            violations.Add(
                $"{path}",
                "UNSPECIFIED",
                $"{path} does not say which face the edge is; name one of the blade's or of the spring's."
            );
        }
    }
}
