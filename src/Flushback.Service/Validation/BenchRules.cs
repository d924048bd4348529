using Flushback.Service.Errors;
using static Flushback.Service.Validation.Ranges;

namespace Flushback.Service.Validation;

/// <summary>What must hold for targets, tolerances and resolution.</summary>
internal static class BenchRules
{
    /// <summary>Smallest step of the lift curve, in degrees.</summary>
    public const double LeastStepDeg = 0.025;

    private const double LargestStepDeg = 10;

    // No slip joint is lifted, relieved or cleared by as much: a larger number is a slip of the unit.
    private const double LargestBenchMm = 100;

    // Above it, faces that do not touch would be listed as contacts.
    private const double LargestContactToleranceMm = 1;

    private const double LargestRestAngleToleranceDeg = 45;

    /// <summary>Gathers every setting outside its range.</summary>
    public static void Check(Wire.BenchSettings bench, Violations violations)
    {
        FieldPath path = new(null, "bench");
        Ranges ranges = new(violations);
        ranges.Check(path.Of("step_deg"), Set(bench.HasStepDeg, bench.StepDeg), LeastStepDeg, LargestStepDeg);
        ranges.Check(
            path.Of("contact_tolerance_mm"),
            Set(bench.HasContactToleranceMm, bench.ContactToleranceMm),
            LeastAboveZero,
            LargestContactToleranceMm
        );
        ranges.Check(
            path.Of("least_contact_spread_mm"),
            Set(bench.HasLeastContactSpreadMm, bench.LeastContactSpreadMm),
            0,
            LargestBenchMm
        );
        ranges.Check(
            path.Of("face_contact_length_mm"),
            Set(bench.HasFaceContactLengthMm, bench.FaceContactLengthMm),
            LeastAboveZero,
            LargestBenchMm
        );
        ranges.Check(
            path.Of("least_corner_gap_mm"),
            Set(bench.HasLeastCornerGapMm, bench.LeastCornerGapMm),
            0,
            LargestBenchMm
        );
        ranges.Check(
            path.Of("least_edge_clearance_mm"),
            Set(bench.HasLeastEdgeClearanceMm, bench.LeastEdgeClearanceMm),
            0,
            LargestBenchMm
        );
        ranges.Check(
            path.Of("least_tip_depth_mm"),
            Set(bench.HasLeastTipDepthMm, bench.LeastTipDepthMm),
            0,
            LargestBenchMm
        );
        ranges.Check(
            path.Of("rest_angle_tolerance_deg"),
            Set(bench.HasRestAngleToleranceDeg, bench.RestAngleToleranceDeg),
            LeastAboveZero,
            LargestRestAngleToleranceDeg
        );
        CheckTarget(bench.Open, path.Of("open"), ranges);
        CheckTarget(bench.HalfStop, path.Of("half_stop"), ranges);
        CheckTarget(bench.Closed, path.Of("closed"), ranges);
    }

    private static void CheckTarget(Wire.StopTarget? target, FieldPath path, Ranges ranges)
    {
        if (target is null)
        {
            return;
        }

        ranges.Check(path.Of("lift_mm"), Set(target.HasLiftMm, target.LiftMm), -LargestBenchMm, LargestBenchMm);
        ranges.Check(
            path.Of("tolerance_mm"),
            Set(target.HasToleranceMm, target.ToleranceMm),
            LeastAboveZero,
            LargestBenchMm
        );
    }
}
