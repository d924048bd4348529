using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Dxf.Writing;

/// <summary>Something to draw, in millimetres in the drawing's own frame.</summary>
public abstract record OverlayEntity
{
    private protected OverlayEntity() { }
}

/// <summary>A polyline of lines and arcs.</summary>
/// <param name="Edges">At least one edge, each starting where the one before ends.</param>
/// <param name="IsClosed">True when the last edge ends where the first begins.</param>
public sealed record OverlayPath(ImmutableArray<Edge> Edges, bool IsClosed) : OverlayEntity
{
    /// <summary>The whole of an outline.</summary>
    public static OverlayPath Of(Outline outline) => new(outline.Edges, IsClosed: true);
}

/// <summary>A single line or arc, as an entity of its own.</summary>
/// <param name="Edge">The line or arc, of some length.</param>
public sealed record OverlayEdge(Edge Edge) : OverlayEntity;

/// <summary>A full circle.</summary>
/// <param name="Circle">The circle.</param>
public sealed record OverlayCircle(Circle Circle) : OverlayEntity;

/// <summary>A point mark.</summary>
/// <param name="At">Where.</param>
public sealed record OverlayPoint(Point At) : OverlayEntity;

/// <summary>A line of text, running along x.</summary>
/// <param name="Text">The text; line breaks and other control characters become spaces.</param>
/// <param name="At">The point of the base line that the alignment names.</param>
/// <param name="HeightMm">Height of a capital letter, in millimetres.</param>
/// <param name="Alignment">Which point of the base line the place is, whatever font the text is shown in.</param>
public sealed record OverlayText(string Text, Point At, double HeightMm, TextAlignment Alignment = TextAlignment.Left)
    : OverlayEntity;

/// <summary>A point of a text's base line; the numbers are those of the format (group 72).</summary>
public enum TextAlignment
{
    /// <summary>Its left end.</summary>
    Left = 0,

    /// <summary>Its middle.</summary>
    Middle = 1,

    /// <summary>Its right end.</summary>
    Right = 2,
}
