namespace Flushback.Geometry.Offsets;

/// <summary>A place where a cutter leaves metal that the drawing does not have.</summary>
/// <param name="Metal">What is left there. Its border is the part's outline and the round the cutter leaves.</param>
/// <param name="At">The place on the part's outline where most is left: the corner itself, as a rule.</param>
/// <param name="DepthMm">How far the metal stands from there to where the cutter comes, in millimetres.</param>
public readonly record struct UnreachedPlace(Region Metal, Point At, double DepthMm)
{
    /// <summary>Area of the metal left, in square millimetres.</summary>
    public double AreaMm2 => Metal?.AreaMm2 ?? 0;
}
