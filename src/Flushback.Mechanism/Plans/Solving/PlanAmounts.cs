using Flushback.Mechanism.Bench;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>Depths in millimetres at the front and the rear place of a face, all slices together.</summary>
internal readonly record struct FaceDepths(double FrontMm, double RearMm)
{
    public bool IsNothing => FrontMm <= 0 && RearMm <= 0;

    public double DistanceTo(FaceDepths other) =>
        Math.Max(Math.Abs(FrontMm - other.FrontMm), Math.Abs(RearMm - other.RearMm));
}

/// <summary>What is to be found: how much comes off where.</summary>
internal readonly record struct PlanAmounts(double OpenFlatMm, FaceDepths HalfStop, FaceDepths Closed)
{
    public FaceDepths At(Stop stop) => stop == Stop.HalfStop ? HalfStop : Closed;

    public PlanAmounts With(Stop stop, FaceDepths depths) =>
        stop == Stop.HalfStop ? this with { HalfStop = depths } : this with { Closed = depths };

    public double DistanceTo(PlanAmounts other) =>
        Math.Max(
            Math.Abs(OpenFlatMm - other.OpenFlatMm),
            Math.Max(HalfStop.DistanceTo(other.HalfStop), Closed.DistanceTo(other.Closed))
        );
}
