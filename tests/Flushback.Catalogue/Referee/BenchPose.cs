using Flushback.Geometry;

namespace Flushback.Catalogue.Referee;

/// <summary>What the referee finds at one blade angle.</summary>
/// <param name="BladeAngle">Blade angle, positive clockwise from open.</param>
/// <param name="SpringRotation">Lowest rotation at which the spring is free of what lies below it.</param>
/// <param name="IsFree">True when blade and spring, whole, do not overlap there: the pose is possible.</param>
public readonly record struct BenchPose(Angle BladeAngle, Angle SpringRotation, bool IsFree);
