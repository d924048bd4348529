using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>A closed contour found on a layer.</summary>
/// <param name="Outline">
/// The contour in millimetres in the drawing's own frame, each edge ending exactly where the next begins; travelled in
/// the direction of the entity that comes first in the file.
/// </param>
/// <param name="Handles">Handles of the entities it is made of, in the order of travel.</param>
public sealed record Contour(Outline Outline, ImmutableArray<string> Handles)
{
    /// <summary>The handle of the entity that each edge of the outline comes from, in the order of its edges.</summary>
    public required ImmutableArray<string> EdgeHandles { get; init; }
}

/// <summary>A full circle found on a layer: a CIRCLE, or arcs that make up one.</summary>
/// <param name="Circle">The circle in millimetres in the drawing's own frame.</param>
/// <param name="Handles">Handles of the entities it is made of.</param>
public sealed record CircleShape(Circle Circle, ImmutableArray<string> Handles);
