using System.Globalization;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Tolerances;
using Flushback.Service.Errors;
using Flushback.Service.Mapping;

namespace Flushback.Service.Validation;

/// <summary>What must hold for tolerances. Whether anything of this knife varies is said by the core, in its own words.</summary>
internal static class StudyRules
{
    // No part of a folding knife is made to as little: a larger number is a slip of the unit.
    private const double LargestMm = 10;

    /// <summary>Gathers what is missing or out of its range.</summary>
    public static void Check(Wire.StudyRequest request, Violations violations)
    {
        if (request is { HasParts: true, Parts: < 1 })
        {
            violations.Add(
                "parts",
                "OUT_OF_RANGE",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"parts is {request.Parts}, but at least one part has to be drawn."
                )
            );
        }

        if (request.Tolerances is not { } tolerances)
        {
            violations.Add("tolerances", "MISSING", "The request holds no tolerances; give at least one above zero.");
            return;
        }

        FieldPath path = new(null, "tolerances");
        Ranges ranges = new(violations);
        Check("pins_mm", tolerances.PinsMm);
        Check("clearance_mm", tolerances.ClearanceMm);
        Check("profile_mm", tolerances.ProfileMm);
        Check("depth_mm", tolerances.DepthMm);
        Check("width_mm", tolerances.WidthMm);
        Check("preload_mm", tolerances.PreloadMm);
        HashSet<Site> seen = [];
        for (int i = 0; i < tolerances.Faces.Count; i++)
        {
            FieldPath face = path.Of("faces", i);
            ranges.Check(face.Of("profile_mm"), tolerances.Faces[i].ProfileMm, 0, LargestMm);
            CheckFace(tolerances.Faces[i].Face, face.Of("face"), seen, violations);
        }

        void Check(string field, double mm) => ranges.Check(path.Of(field), mm, 0, LargestMm);
    }

    private static void CheckFace(Wire.Site? wire, FieldPath path, HashSet<Site> seen, Violations violations)
    {
        bool isKnown =
            wire is not null
            && wire.FaceCase switch
            {
                Wire.Site.FaceOneofCase.BladeFace => Enum.IsDefined(wire.BladeFace),
                Wire.Site.FaceOneofCase.SpringFace => Enum.IsDefined(wire.SpringFace),
                _ => false,
            };
        if (!isKnown || !ToleranceList.Faces.Contains(wire!.ToSite()))
        {
            violations.Add(
                $"{path}",
                "NO_PROFILE",
                $"{path} names no face whose profile varies; name one of {string.Join(", ", ToleranceList.Faces)}."
            );
        }
        else if (!seen.Add(wire!.ToSite()))
        {
            violations.Add($"{path}", "DUPLICATE", $"{path} names a face a second time; give each profile once.");
        }
    }
}
