using Flushback.Mechanism.Materials;
using Flushback.Service.Errors;
using static Flushback.Service.Validation.Ranges;

namespace Flushback.Service.Validation;

/// <summary>What must hold for spring, steel and friction in the handle.</summary>
internal static class HandleRules
{
    // No backspring is wider, preloaded or drilled by as much: a larger number is a slip of the unit.
    private const double LargestMm = 100;
    private const double LeastHrc = 20;
    private const double LargestHrc = 70;
    private const double LargestN = 10_000;
    private const double LargestMpa = 100_000;
    private const double LeastModulusMpa = 50_000;
    private const double LargestModulusMpa = 400_000;
    private const int LongestSteelName = 60;

    /// <summary>Gathers every setting outside its range. Width and preload are judged with the knife, in its own words.</summary>
    public static void Check(Wire.HandleSettings handle, Violations violations)
    {
        FieldPath path = new(null, "handle");
        Ranges ranges = new(violations);
        ranges.Check(path.Of("width_mm"), Set(handle.HasWidthMm, handle.WidthMm), double.MinValue, LargestMm);
        ranges.Check(path.Of("preload_mm"), Set(handle.HasPreloadMm, handle.PreloadMm), double.MinValue, LargestMm);
        ranges.Check(path.Of("rear_pin_shift_mm"), Set(handle.HasRearPinShiftMm, handle.RearPinShiftMm), 0, LargestMm);
        ranges.Check(
            path.Of("spring_hardness_hrc"),
            Set(handle.HasSpringHardnessHrc, handle.SpringHardnessHrc),
            LeastHrc,
            LargestHrc
        );
        ranges.Check(
            path.Of("blade_hardness_hrc"),
            Set(handle.HasBladeHardnessHrc, handle.BladeHardnessHrc),
            LeastHrc,
            LargestHrc
        );
        ranges.Check(path.Of("friction"), Set(handle.HasFriction, handle.Friction), 0, 1);
        ranges.Check(
            path.Of("nail_nick_mm"),
            Set(handle.HasNailNickMm, handle.NailNickMm),
            LeastAboveZero,
            10 * LargestMm
        );
        ranges.Check(
            path.Of("stiff_nose_mm"),
            Set(handle.HasStiffNoseMm, handle.StiffNoseMm),
            -LargestMm,
            10 * LargestMm
        );
        ranges.Check(
            path.Of("wanted_pull_n"),
            Set(handle.HasWantedPullN, handle.WantedPullN),
            LeastAboveZero,
            LargestN
        );
        ranges.Check(
            path.Of("most_stress_mpa"),
            Set(handle.HasMostStressMpa, handle.MostStressMpa),
            LeastAboveZero,
            LargestMpa
        );
        CheckSteel(handle, path, ranges, violations);
        if (handle.Varied == Wire.Dimension.StiffNose)
        {
            violations.Add(
                $"{path.Of("varied")}",
                "NOT_A_DIMENSION",
                $"{path.Of("varied")} is the stiff nose, which is an assumption that no maker can change; vary the preload, the spring's depth or width, or the centre pin."
            );
        }
    }

    private static void CheckSteel(Wire.HandleSettings handle, FieldPath path, Ranges ranges, Violations violations)
    {
        if (handle.OwnSteel is { } own)
        {
            FieldPath steel = path.Of("own_steel");
            ranges.Check(steel.Of("modulus_mpa"), own.ModulusMpa, LeastModulusMpa, LargestModulusMpa);
            ranges.Check(steel.Of("tensile_mpa"), Set(own.HasTensileMpa, own.TensileMpa), LeastAboveZero, LargestMpa);
            if (own.Name.Length > LongestSteelName || own.Name.Any(char.IsControl))
            {
                violations.Add(
                    $"{steel.Of("name")}",
                    "BAD_NAME",
                    FormattableString.Invariant(
                        $"{steel.Of("name")} must be at most {LongestSteelName} characters that can be printed."
                    )
                );
            }
        }
        else if (handle.SpringSteel.Length > 0 && Steels.Named(handle.SpringSteel) is null)
        {
            violations.Add(
                $"{path.Of("spring_steel")}",
                "UNKNOWN_STEEL",
                $"The spring's steel is not known by that designation; known are {string.Join(", ", Steels.All.Select(steel => steel.Designation))}, or give own_steel with its modulus."
            );
        }
    }
}
