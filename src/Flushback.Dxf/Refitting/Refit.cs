using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Geometry;

namespace Flushback.Dxf.Refitting;

/// <summary>A run of short edges that became one arc, or a whole outline of them that became a circle.</summary>
/// <param name="FirstEdge">Index of the first edge of the run in what was given; the run may go on past the last edge.</param>
/// <param name="EdgeCount">Edges in the run.</param>
/// <param name="From">Where the run begins, in millimetres.</param>
/// <param name="To">Where it ends; the same place for a circle.</param>
/// <param name="Circle">The circle it lies on.</param>
/// <param name="Sweep">Angle of the arc, positive counter-clockwise; a whole turn for a circle.</param>
/// <param name="DeviationMm">Farthest that the old edges lie from it, in millimetres.</param>
public sealed record Refit(
    int FirstEdge,
    int EdgeCount,
    Point From,
    Point To,
    Circle Circle,
    Angle Sweep,
    double DeviationMm
);

/// <summary>A shape with its arcs back.</summary>
/// <param name="Geometry">
/// The shape: what was given when nothing was found, a circle when all of it lies on one. An outline may begin at another
/// vertex; it keeps its direction.
/// </param>
/// <param name="Refits">What was found, along the shape.</param>
public sealed record RefittedShape(ShapeGeometry Geometry, ImmutableArray<Refit> Refits);
