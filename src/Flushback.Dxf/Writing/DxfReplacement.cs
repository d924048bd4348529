using System.Collections.Immutable;
using Flushback.Dxf.Drawings;

namespace Flushback.Dxf.Writing;

/// <summary>Entities of a drawing that are left out, and what stands in their place: made as a whole or not at all.</summary>
/// <param name="Gone">Entities of the file to leave out; none, to add only.</param>
/// <param name="Layer">A layer that the drawing has, by its table or by an entity, for what is added.</param>
/// <param name="Added">
/// What to draw instead, in millimetres; none, to leave out only. It takes colour, line type and height of the first
/// entity gone, and its place in the file, so that a machine that cuts in the order of the file still does.
/// </param>
public sealed record DxfReplacement(ImmutableArray<DxfShape> Gone, string Layer, ImmutableArray<OverlayEntity> Added)
{
    /// <summary>Leaves entities out.</summary>
    public static DxfReplacement LeavingOut(params ImmutableArray<DxfShape> gone) => new(gone, "0", []);
}
