namespace Flushback.Geometry.Removal;

/// <summary>How far a slice goes beyond the stretch it is meant for.</summary>
/// <param name="GoesOn">
/// True when the tool runs out beyond both ends until the outline falls away from it; false when it stays in between.
/// </param>
/// <param name="WallBefore">
/// The edge before the stretch against which the tool runs, where the outline turns outward; it is prolonged to meet
/// the cut. Null when the outline falls away there.
/// </param>
/// <param name="WallAfter">The same after the stretch.</param>
public sealed record SliceReach(bool GoesOn, int? WallBefore = null, int? WallAfter = null)
{
    /// <summary>No farther than the stretch.</summary>
    public static SliceReach Within { get; } = new(GoesOn: false);

    /// <summary>Until the outline falls away.</summary>
    public static SliceReach Through { get; } = new(GoesOn: true);
}
