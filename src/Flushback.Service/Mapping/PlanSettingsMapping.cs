using Flushback.Geometry;
using Flushback.Mechanism.Measured;
using Flushback.Mechanism.Plans;

namespace Flushback.Service.Mapping;

/// <summary>What a plan is to reach, from the contract: what is absent keeps the core's default.</summary>
internal static class PlanSettingsMapping
{
    /// <summary>From the contract; validated.</summary>
    public static PlanSettings ToSettings(this Wire.PlanRequest request)
    {
        PlanSettings defaults = new();
        Wire.PlanSettings asked = request.Plan ?? new Wire.PlanSettings();
        Mechanism.Bench.BenchSettings bench = request.Bench.ToSettings();
        return new PlanSettings
        {
            Targets = bench.Targets,
            StockKeptMm = asked.HasStockKeptMm ? asked.StockKeptMm : defaults.StockKeptMm,
            RestAngleTolerance = asked.HasRestWindowDeg
                ? Angle.FromDegrees(asked.RestWindowDeg)
                : defaults.RestAngleTolerance,
            OpenAngleTolerance = asked.HasOpenWindowDeg
                ? Angle.FromDegrees(asked.OpenWindowDeg)
                : defaults.OpenAngleTolerance,
            TipDepth = asked.TipDepth is { } depth ? new LengthWindow(depth.LeastMm, depth.MostMm) : null,
            LeastCornerRadiusMm = asked.HasLeastCornerRadiusMm
                ? asked.LeastCornerRadiusMm
                : defaults.LeastCornerRadiusMm,
            ReliefDepthMm = asked.Relief?.DepthMm ?? defaults.ReliefDepthMm,
            ReliefMarginMm = asked.Relief is { HasMarginMm: true } relief ? relief.MarginMm : defaults.ReliefMarginMm,
            MostOffOpenFlatMm = asked.HasMostOffOpenFlatMm ? asked.MostOffOpenFlatMm : defaults.MostOffOpenFlatMm,
            MostMeasuredOffsetMm = request.Measured is { HasMostOffsetMm: true } measured
                ? measured.MostOffsetMm
                : defaults.MostMeasuredOffsetMm,
            Simulation = new() { Bench = bench, Passes = request.Remains.ToSettings() },
        };
    }

    /// <summary>What the dial showed, from the contract; validated.</summary>
    public static MeasuredReadings ToReadings(this Wire.MeasuredReadings measured) =>
        new()
        {
            HalfStopMm = measured.HasHalfStopMm ? measured.HalfStopMm : null,
            ClosedMm = measured.HasClosedMm ? measured.ClosedMm : null,
            OpenHeightMm = measured.HasOpenHeightMm ? measured.OpenHeightMm : null,
            HalfStopRestAngle = measured.HasHalfStopRestDeg ? Angle.FromDegrees(measured.HalfStopRestDeg) : null,
            ClosedRestAngle = measured.HasClosedRestDeg ? Angle.FromDegrees(measured.ClosedRestDeg) : null,
        };
}
