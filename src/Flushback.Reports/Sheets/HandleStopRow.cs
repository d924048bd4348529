using Flushback.Geometry;
using Flushback.Mechanism.Handle;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>A stop in the handle in words, beside the bench.</summary>
internal sealed record HandleStopRow
{
    public required string Name { get; init; }

    public required string Thou { get; init; }

    public required string Mm { get; init; }

    public required string BenchThou { get; init; }

    public required string BenchMm { get; init; }

    public required string RestsAt { get; init; }

    /// <summary>Greatest torque of the spring alone towards the stop, in N mm.</summary>
    public required string Snap { get; init; }

    /// <summary>How far before the stop the spring takes over from the hand.</summary>
    public required string TakesOver { get; init; }

    public required string Stress { get; init; }

    public static HandleStopRow Of(HandleStop stop, Measure measure) =>
        new()
        {
            Name = StopNames.Of(stop.Stop),
            Thou = measure.SignedThou(stop.LiftMm),
            Mm = measure.SignedMm(stop.LiftMm),
            BenchThou = measure.SignedThou(stop.BenchLiftMm),
            BenchMm = measure.SignedMm(stop.BenchLiftMm),
            RestsAt = stop.Rests ? measure.Degrees(stop.RestAngle) : "no rest",
            Snap = measure.Number(stop.SnapNmm, 0),
            TakesOver = stop.TakesOver > Angle.Zero ? $"{measure.Degrees(stop.TakesOver, 0)} before" : "not by itself",
            Stress = measure.Number(stop.PeakStressMpa, 0),
        };
}
