using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>Joined entities that do not close.</summary>
/// <param name="Edges">The edges in millimetres in the drawing's own frame, each starting exactly where the one before ends.</param>
/// <param name="Handles">Handles of the entities, in the order of travel.</param>
/// <param name="IsAtBranch">True when an end lies where more than two meet: what closes it is then not known.</param>
public sealed record OpenPath(ImmutableArray<Edge> Edges, ImmutableArray<string> Handles, bool IsAtBranch)
{
    /// <summary>The handle of the entity that each edge comes from, in their order.</summary>
    public required ImmutableArray<string> EdgeHandles { get; init; }
}
