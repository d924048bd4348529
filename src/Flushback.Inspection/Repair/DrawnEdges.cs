using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Geometry;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Repair;

/// <summary>The edges of a shape as it was drawn.</summary>
internal static class DrawnEdges
{
    /// <summary>Ends that were computed from angles are this near to what was written.</summary>
    private const double SameMm = 2e-6;

    /// <summary>The edges in the order of drawing.</summary>
    public static ImmutableArray<Edge> Of(DxfShape shape) =>
        shape.Geometry switch
        {
            OpenChain chain => chain.Edges,
            ClosedOutline closed => closed.Outline.Edges,
            FullCircle full => CutContour.OutlineOf(full.Circle).Edges,
            _ => [],
        };

    /// <summary>Whether an edge of a chain is the k-th of so many that came from a shape, travelled either way.</summary>
    public static bool IsUnchanged(ImmutableArray<Edge> drawn, in Edge edge, int k, int count) =>
        drawn.Length == count && (AreSame(drawn[k], edge) || AreSame(drawn[count - 1 - k].Reversed, edge));

    private static bool AreSame(in Edge one, in Edge other) =>
        one.Start.IsWithin(SameMm, other.Start)
        && one.End.IsWithin(SameMm, other.End)
        && one.PointAt(0.5).IsWithin(SameMm, other.PointAt(0.5));
}
