using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Dxf.Drawings;

/// <summary>The geometry of one entity, in millimetres in the drawing's own frame: a chain, an outline or a circle.</summary>
public abstract record ShapeGeometry
{
    private protected ShapeGeometry() { }
}

/// <summary>Lines and arcs joined end to end, with two free ends.</summary>
/// <param name="Edges">At least one edge, each starting exactly where the one before ends.</param>
public sealed record OpenChain(ImmutableArray<Edge> Edges) : ShapeGeometry;

/// <summary>A shape that closes by itself.</summary>
/// <param name="Outline">The outline, in the direction it was drawn.</param>
public sealed record ClosedOutline(Outline Outline) : ShapeGeometry;

/// <summary>A full circle.</summary>
/// <param name="Circle">The circle.</param>
public sealed record FullCircle(Circle Circle) : ShapeGeometry;
