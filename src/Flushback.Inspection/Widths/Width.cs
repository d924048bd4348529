using Flushback.Geometry;

namespace Flushback.Inspection.Widths;

/// <summary>A place where the distance across an area, from border to border, is least.</summary>
/// <param name="Mm">The distance.</param>
/// <param name="From">One side.</param>
/// <param name="To">The other side.</param>
/// <param name="FromEdge">The edge one side lies on, by its number in the border.</param>
/// <param name="ToEdge">The edge the other side lies on.</param>
/// <param name="Extent">The middles of all ways as short between these edges: a point, but where they run parallel.</param>
internal readonly record struct Width(double Mm, Point From, Point To, int FromEdge, int ToEdge, Edge Extent)
{
    /// <summary>The middle of the way across.</summary>
    public Point Middle => From.MidpointTo(To);
}
