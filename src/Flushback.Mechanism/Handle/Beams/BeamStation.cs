using Flushback.Geometry;

namespace Flushback.Mechanism.Handle.Beams;

/// <summary>A place along the spring at which its bending is summed up.</summary>
/// <param name="Centre">On the centreline, knife frame, spring as drawn.</param>
/// <param name="Section">The spring there.</param>
/// <param name="WeightMm">Length of centreline this place stands for in an integral along it.</param>
public readonly record struct BeamStation(Point Centre, BeamSection Section, double WeightMm);
