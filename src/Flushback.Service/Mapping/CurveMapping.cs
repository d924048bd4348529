using Flushback.Geometry;
using Flushback.Mechanism.Bench;

namespace Flushback.Service.Mapping;

/// <summary>The lift curve, to the contract.</summary>
internal static class CurveMapping
{
    /// <summary>To the contract: degrees, and slopes per degree.</summary>
    public static Wire.LiftCurve ToWire(this LiftCurve curve)
    {
        Wire.LiftCurve wire = new();
        wire.Samples.AddRange(curve.Samples.Select(ToWire));
        wire.Intervals.AddRange(curve.Intervals.Select(ToWire));
        return wire;
    }

    private static Wire.LiftSample ToWire(LiftSample sample)
    {
        Wire.LiftSample wire = new()
        {
            BladeAngleDeg = sample.BladeAngle.Degrees,
            LiftMm = sample.LiftMm,
            SlopeMmPerDeg = sample.SlopeMmPerRad / Angle.DegreesPerRadian,
            SpringRotationDeg = sample.SpringRotation.Degrees,
            BladeFace = sample.BladeFace.ToWire(),
            SpringFace = sample.SpringFace.ToWire(),
            EdgeClearanceMm = sample.EdgeClearanceMm,
            TailClearanceMm = sample.TailClearanceMm,
        };
        if (sample.TipDepthMm is { } depth)
        {
            wire.TipDepthMm = depth;
        }

        return wire;
    }

    private static Wire.CarriedInterval ToWire(CarriedInterval interval) =>
        new()
        {
            FromDeg = interval.From.Degrees,
            ToDeg = interval.To.Degrees,
            BladeFace = interval.BladeFace.ToWire(),
            SpringFace = interval.SpringFace.ToWire(),
        };
}
