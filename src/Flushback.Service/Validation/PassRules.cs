using System.Globalization;
using Flushback.Mechanism.Passes;
using Flushback.Service.Errors;
using static Flushback.Service.Validation.Ranges;

namespace Flushback.Service.Validation;

/// <summary>What must hold for passes. Whether one can be made on this knife is said by the core, in its own words.</summary>
internal static class PassRules
{
    // No tang is sliced, rounded or cut by as much, and no wall is as thick: a larger number is a slip of the unit.
    private const double LargestMm = 100;

    // A wheel may be as large as a stone.
    private const double LargestWheelMm = 10_000;

    private const double LeastEndFaceDeg = 30;
    private const double LargestEndFaceDeg = 150;

    /// <summary>Gathers what is missing or out of its range.</summary>
    public static void Check(Wire.SimulateRequest request, Violations violations)
    {
        if (request.Passes.Count == 0)
        {
            violations.Add("passes", "MISSING", "The request holds no pass; give at least one.");
        }

        for (int i = 0; i < request.Passes.Count; i++)
        {
            Check(request.Passes[i], new FieldPath(null, "passes", i), violations);
        }

        Check(request.Remains, violations);
    }

    /// <summary>Gathers what is out of its range in what has to be left; null when nothing is said of it.</summary>
    public static void Check(Wire.PassSettings? remains, Violations violations)
    {
        if (remains is null)
        {
            return;
        }

        FieldPath path = new(null, "remains");
        Ranges ranges = new(violations);
        ranges.Check(
            path.Of("least_pin_wall_mm"),
            Set(remains.HasLeastPinWallMm, remains.LeastPinWallMm),
            0,
            LargestMm
        );
        ranges.Check(path.Of("least_face_mm"), Set(remains.HasLeastFaceMm, remains.LeastFaceMm), 0, LargestMm);
    }

    /// <summary>Refuses a request with the pass that cannot be made.</summary>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT, when there is one.</exception>
    public static void ThrowIf(RefusedPass? refused)
    {
        if (refused is null)
        {
            return;
        }

        Violations violations = new();
        violations.Add(
            $"{new FieldPath(null, "passes", refused.Index)}",
            refused.Problem.Reason,
            string.Create(CultureInfo.InvariantCulture, $"Pass {refused.Index + 1}: {refused.Problem.Sentence}")
        );
        violations.ThrowIfAny();
    }

    private static void Check(Wire.Pass pass, FieldPath path, Violations violations)
    {
        Ranges ranges = new(violations);
        switch (pass.KindCase)
        {
            case Wire.Pass.KindOneofCase.None:
                violations.Add($"{path}", "MISSING", $"{path} does not say what is done; name a pass.");
                break;
            case Wire.Pass.KindOneofCase.FlatSlice:
                CheckSite(pass.FlatSlice.Face, path.Of("flat_slice").Of("face"), violations);
                Depth("flat_slice", "front_depth_mm", pass.FlatSlice.FrontDepthMm);
                Depth("flat_slice", "rear_depth_mm", pass.FlatSlice.RearDepthMm);
                break;
            case Wire.Pass.KindOneofCase.WheelSlice:
                CheckSite(pass.WheelSlice.Face, path.Of("wheel_slice").Of("face"), violations);
                Depth("wheel_slice", "front_depth_mm", pass.WheelSlice.FrontDepthMm);
                Depth("wheel_slice", "rear_depth_mm", pass.WheelSlice.RearDepthMm);
                Amount("wheel_slice", "wheel_radius_mm", pass.WheelSlice.WheelRadiusMm, LargestWheelMm);
                break;
            case Wire.Pass.KindOneofCase.RoundCorner:
                CheckSite(pass.RoundCorner.Corner, path.Of("round_corner").Of("corner"), violations);
                Depth("round_corner", "radius_mm", pass.RoundCorner.RadiusMm);
                break;
            case Wire.Pass.KindOneofCase.ReliefArc:
                CheckSite(pass.ReliefArc.Face, path.Of("relief_arc").Of("face"), violations);
                Depth("relief_arc", "depth_mm", pass.ReliefArc.DepthMm);
                Depth("relief_arc", "front_margin_mm", pass.ReliefArc.FrontMarginMm);
                Depth("relief_arc", "rear_margin_mm", pass.ReliefArc.RearMarginMm);
                break;
            case Wire.Pass.KindOneofCase.DressKick:
                Depth("dress_kick", "depth_mm", pass.DressKick.DepthMm);
                break;
            case Wire.Pass.KindOneofCase.LowerNose:
                Depth("lower_nose", "front_depth_mm", pass.LowerNose.FrontDepthMm);
                Depth("lower_nose", "rear_depth_mm", pass.LowerNose.RearDepthMm);
                break;
            case Wire.Pass.KindOneofCase.DressEndFace:
                ranges.Check(
                    path.Of("dress_end_face").Of("angle_deg"),
                    pass.DressEndFace.AngleDeg,
                    LeastEndFaceDeg,
                    LargestEndFaceDeg
                );
                Depth("dress_end_face", "depth_mm", pass.DressEndFace.DepthMm);
                break;
            case Wire.Pass.KindOneofCase.ShortenTip:
                Depth("shorten_tip", "length_mm", pass.ShortenTip.LengthMm);
                break;
        }

        // What is below zero would add metal: the core says so, with the pass it is about.
        void Depth(string kind, string field, double mm) => Amount(kind, field, mm, LargestMm);

        void Amount(string kind, string field, double mm, double largest) =>
            ranges.Check(path.Of(kind).Of(field), mm, double.MinValue, largest);
    }

    private static void CheckSite(Wire.Site? site, FieldPath path, Violations violations)
    {
        bool isNamed = site?.FaceCase switch
        {
            Wire.Site.FaceOneofCase.BladeFace => site.BladeFace != Wire.BladeFace.Unspecified,
            Wire.Site.FaceOneofCase.SpringFace => site.SpringFace != Wire.SpringFace.Unspecified,
            _ => false,
        };
        if (!isNamed)
        {
            violations.Add($"{path}", "MISSING", $"{path} names no face or corner; say where the pass works.");
        }
    }
}
