using Flushback.Geometry;

namespace Flushback.Inspection.Widths;

/// <summary>Tells whether a way across an area is least about both its ends.</summary>
internal static class WayAcross
{
    /// <summary>Shorter ways are the joint of two edges.</summary>
    public const double ShortestMm = 1e-6;

    /// <summary>Of two curvatures, what still counts as parallel: a bow of a thousandth of the distance's own curvature.</summary>
    private const double ParallelShare = 1e-3;

    /// <summary>Hands over a way when it leads into the area at both ends and is least about both.</summary>
    public static void Try(Border border, Foot from, Foot to, Action<Width> found, Edge? extent = null)
    {
        double distance = from.At.DistanceTo(to.At);
        if (distance <= ShortestMm)
        {
            return;
        }

        Vector across = (to.At - from.At) * (1 / distance);
        if (
            PointOf(border, from, across) is { } one
            && PointOf(border, to, -across) is { } other
            && IsLeast(distance, one.Forward, other.Backward)
            && IsLeast(distance, one.Backward, other.Forward)
        )
        {
            Point middle = from.At.MidpointTo(to.At);
            found(new Width(distance, from.At, to.At, from.Edge, to.Edge, extent ?? new Edge(middle, middle)));
        }
    }

    private static FacingPoint? PointOf(Border border, Foot foot, Vector across) =>
        foot.Along is { } along
            ? FacingPoint.Within(border, foot.Edge, foot.At, along, across)
            : FacingPoint.AtStart(border, foot.Edge, across);

    /// <summary>Whether the distance does not shrink as both ends move towards the same side.</summary>
    /// <remarks>
    /// For a way d square on curves of curvature k and l towards each other, the second derivative of its square along both
    /// is [[1 - d k, -1], [-1, 1 - d l]] up to a factor (elementary calculus); it is not negative when both diagonal terms
    /// are not and (1 - d k)(1 - d l) is at least 1. It is 1 for parallel lines and for arcs about one centre.
    /// </remarks>
    private static bool IsLeast(double distance, double curvature, double otherCurvature)
    {
        double first = 1 - (distance * curvature);
        double second = 1 - (distance * otherCurvature);
        if (first < -ParallelShare || second < -ParallelShare)
        {
            return false;
        }

        return double.IsInfinity(first) || double.IsInfinity(second) || first * second >= 1 - ParallelShare;
    }
}
