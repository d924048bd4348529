using Flushback.Geometry;
using Flushback.Mechanism.Bench;

namespace Flushback.Service.Mapping;

/// <summary>Targets, tolerances and resolution from the contract: what is absent keeps the core's default.</summary>
internal static class SettingsMapping
{
    /// <summary>From the contract; null for all defaults.</summary>
    public static BenchSettings ToSettings(this Wire.BenchSettings? bench)
    {
        BenchSettings defaults = new();
        if (bench is null)
        {
            return defaults;
        }

        return new BenchSettings
        {
            Targets = TargetsOf(bench),
            Step = bench.HasStepDeg ? Angle.FromDegrees(bench.StepDeg) : defaults.Step,
            ContactToleranceMm = bench.HasContactToleranceMm ? bench.ContactToleranceMm : defaults.ContactToleranceMm,
            LeastContactSpreadMm = bench.HasLeastContactSpreadMm
                ? bench.LeastContactSpreadMm
                : defaults.LeastContactSpreadMm,
            FaceContactLengthMm = bench.HasFaceContactLengthMm
                ? bench.FaceContactLengthMm
                : defaults.FaceContactLengthMm,
            LeastCornerGapMm = bench.HasLeastCornerGapMm ? bench.LeastCornerGapMm : defaults.LeastCornerGapMm,
            LeastEdgeClearanceMm = bench.HasLeastEdgeClearanceMm
                ? bench.LeastEdgeClearanceMm
                : defaults.LeastEdgeClearanceMm,
            LeastTipDepthMm = bench.HasLeastTipDepthMm ? bench.LeastTipDepthMm : defaults.LeastTipDepthMm,
            RestAngleTolerance = bench.HasRestAngleToleranceDeg
                ? Angle.FromDegrees(bench.RestAngleToleranceDeg)
                : defaults.RestAngleTolerance,
        };
    }

    private static StopTargets TargetsOf(Wire.BenchSettings bench)
    {
        StopTargets set = bench.TargetSet == Wire.TargetSet.Finished ? StopTargets.Finished : StopTargets.BeforeFitting;

        // The dial is zeroed at open: no other lift can be wanted there.
        StopTarget open = TargetOf(bench.Open, set.Open) with
        {
            LiftMm = 0,
        };
        return new StopTargets(open, TargetOf(bench.HalfStop, set.HalfStop), TargetOf(bench.Closed, set.Closed));
    }

    private static StopTarget TargetOf(Wire.StopTarget? asked, StopTarget otherwise) =>
        asked is null
            ? otherwise
            : new StopTarget(
                asked.HasLiftMm ? asked.LiftMm : otherwise.LiftMm,
                asked.HasToleranceMm ? asked.ToleranceMm : otherwise.ToleranceMm
            );
}
