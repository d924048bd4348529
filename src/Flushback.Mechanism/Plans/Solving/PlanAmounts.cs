using Flushback.Mechanism.Bench;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>Depths in millimetres at the front and the rear place of a face, all slices together.</summary>
internal readonly record struct FaceDepths(double FrontMm, double RearMm)
{
    public bool IsNothing => FrontMm <= 0 && RearMm <= 0;

    /// <summary>What comes off at either end.</summary>
    public double LevelMm => Math.Min(FrontMm, RearMm);

    public double DeeperMm => Math.Max(FrontMm, RearMm);

    public FaceDepths HalfwayTo(FaceDepths other) => new((FrontMm + other.FrontMm) / 2, (RearMm + other.RearMm) / 2);

    public double DistanceTo(FaceDepths other) =>
        Math.Max(Math.Abs(FrontMm - other.FrontMm), Math.Abs(RearMm - other.RearMm));
}

/// <summary>What is to be found: how much comes off where.</summary>
internal readonly record struct PlanAmounts(FaceDepths OpenFlat, FaceDepths HalfStop, FaceDepths Closed)
{
    public FaceDepths At(Stop stop) => stop == Stop.HalfStop ? HalfStop : Closed;

    public PlanAmounts With(Stop stop, FaceDepths depths) =>
        stop == Stop.HalfStop ? this with { HalfStop = depths } : this with { Closed = depths };

    public PlanAmounts HalfwayTo(PlanAmounts other) =>
        new(OpenFlat.HalfwayTo(other.OpenFlat), HalfStop.HalfwayTo(other.HalfStop), Closed.HalfwayTo(other.Closed));

    public double DistanceTo(PlanAmounts other) =>
        Math.Max(
            OpenFlat.DistanceTo(other.OpenFlat),
            Math.Max(HalfStop.DistanceTo(other.HalfStop), Closed.DistanceTo(other.Closed))
        );
}

/// <summary>To which lines the faces are cut, and what comes off the open flat, the first to be cut.</summary>
/// <remarks>
/// Where the depths of a face count moves a little with the passes before it; the line of its cut does not, so what is done
/// to one face stays the same when the other is changed.
/// </remarks>
internal readonly record struct PlanCuts(FaceDepths OpenFlat, CutLine? HalfStop, CutLine? Closed);
