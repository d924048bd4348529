using Flushback.Geometry.Crossings;

namespace Flushback.Geometry.Distances;

/// <summary>Nearest points of two lines or arcs.</summary>
/// <remarks>
/// The shortest way between two edges that do not cross either ends at an end of one of them, or stands square on both.
/// The latter exists only where their carriers (whole line, whole circle) do not cross, and then once: from the foot of
/// the centre on the line, or along the line of centres.
/// </remarks>
internal static class EdgeToEdge
{
    public static Nearest Between(in Edge a, in Edge b)
    {
        if (Carriers.TryCommonPoint(a, b, out Point common))
        {
            return new Nearest(0, common, common);
        }

        Nearest best = PointToEdge.Between(a.Start, b);
        best = Nearest.Shorter(best, PointToEdge.Between(a.End, b));
        best = Nearest.Shorter(best, PointToEdge.Between(b.Start, a).Swapped);
        best = Nearest.Shorter(best, PointToEdge.Between(b.End, a).Swapped);
        return (a.IsArc, b.IsArc) switch
        {
            (false, false) => best,
            (false, true) => Nearest.Shorter(best, SquareOnLine(a, b)),
            (true, false) => Nearest.Shorter(best, SquareOnLine(b, a).Swapped),
            (true, true) => Nearest.Shorter(best, AlongCentres(a, b)),
        };
    }

    private static Nearest SquareOnLine(in Edge line, in Edge arc)
    {
        Point foot = PointToEdge.Between(arc.Centre, line).OnSecond;
        return PointToEdge.Between(foot, arc);
    }

    private static Nearest AlongCentres(in Edge a, in Edge b)
    {
        // Seen from the smaller circle, the larger one is nearest straight away from (or, when they lie apart,
        // straight towards) its centre.
        (Edge small, Edge large) = a.RadiusMm <= b.RadiusMm ? (a, b) : (b, a);
        Vector between = large.Centre - small.Centre;
        double distance = between.Length;
        double smallRadius = small.RadiusMm;
        if (distance == 0)
        {
            // About one centre every common direction is equally near, so an end is as good.
            return Nearest.None;
        }

        Vector towards = distance > large.RadiusMm ? between : -between;
        if (!small.SpansDirection(towards))
        {
            return Nearest.None;
        }

        Point onSmall = small.Centre + (towards * (smallRadius / distance));
        Nearest found = PointToEdge.Between(onSmall, large);
        return a.RadiusMm <= b.RadiusMm ? found : found.Swapped;
    }
}
