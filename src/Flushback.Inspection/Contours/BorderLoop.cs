using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Inspection.Contours;

/// <summary>A contour travelled as the border of an area on its left.</summary>
/// <param name="Contour">The contour.</param>
/// <param name="Path">The way round.</param>
/// <param name="EdgeHandles">Handle (or place) of the entity that each edge of the way comes from.</param>
internal sealed record BorderLoop(CutContour Contour, Outline Path, ImmutableArray<string> EdgeHandles)
{
    /// <summary>The border of the area on the other side.</summary>
    public BorderLoop Reversed() => new(Contour, Path.Reversed(), [.. EdgeHandles.Reverse()]);
}
