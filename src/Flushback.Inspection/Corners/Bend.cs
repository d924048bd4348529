using Flushback.Geometry;

namespace Flushback.Inspection.Corners;

/// <summary>An inner corner or a hollow arc: a place where the border turns away from the metal.</summary>
/// <param name="TurnRad">How far it turns, positive.</param>
/// <param name="RadiusMm">Its radius; 0 for a corner.</param>
/// <param name="At">The corner, or the middle of the arc.</param>
/// <param name="From">Where it begins: the edge by its number, and for a corner the edge after it.</param>
/// <param name="IsCorner">True for a corner.</param>
internal readonly record struct Bend(double TurnRad, double RadiusMm, Point At, int From, bool IsCorner);
