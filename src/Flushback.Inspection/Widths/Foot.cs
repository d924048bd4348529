using Flushback.Geometry;

namespace Flushback.Inspection.Widths;

/// <summary>Where a way across an area may end.</summary>
/// <param name="Edge">The edge it lies on or, for a vertex, the one that begins there.</param>
/// <param name="At">The point.</param>
/// <param name="Along">Unit direction of travel there; null for a vertex, which has two.</param>
internal readonly record struct Foot(int Edge, Point At, Vector? Along = null);
