namespace Flushback.Mechanism.Bench.Solving;

/// <summary>How far the nose may turn about the (raised) centre pin between the tang below it and a shoulder over it.</summary>
/// <param name="Lowest">Least turn, in radians.</param>
/// <param name="Highest">Most turn, in radians.</param>
/// <param name="Floor">What carries the nose at its least turn.</param>
/// <param name="Ceiling">What holds it down at its most.</param>
internal readonly record struct NoseBounds(
    double Lowest,
    double Highest,
    SpringPose.Feature Floor,
    SpringPose.Feature Ceiling
)
{
    /// <summary>True when there is tang below the nose at all.</summary>
    public bool IsFloored => double.IsFinite(Lowest);

    /// <summary>True when a shoulder overhangs the nose.</summary>
    public bool IsCeiled => double.IsFinite(Highest);
}
