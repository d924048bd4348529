using Flushback.Geometry;

namespace Flushback.Dxf.Refitting;

/// <summary>Holds a run of edges against a circle.</summary>
internal static class RunFit
{
    /// <summary>How far angles of edges may add up to something else than the arc: rounding of vertices, no more.</summary>
    private const double MostAngleError = 0.02;

    /// <summary>The largest distance between run and circle, in millimetres; null when the run is no such arc.</summary>
    /// <param name="run">The edges, end to end.</param>
    /// <param name="circle">The circle.</param>
    /// <param name="sweep">Angle the run should take up on it, positive counter-clockwise.</param>
    /// <param name="tolerances">What is allowed.</param>
    public static double? DeviationMm(ReadOnlySpan<Edge> run, Circle circle, double sweep, RefitTolerances tolerances)
    {
        double direction = Math.Sign(sweep);
        double total = 0;
        double largest = 0;
        foreach (Edge edge in run)
        {
            double angle = direction * AngleOf(edge, circle.Centre);
            double atVertex = Math.Abs(edge.Start.DistanceTo(circle.Centre) - circle.RadiusMm);
            double within = edge.IsArc
                ? Math.Abs(edge.PointAt(0.5).DistanceTo(circle.Centre) - circle.RadiusMm)
                : circle.RadiusMm - NearestToCentre(edge, circle.Centre);
            bool isPart =
                angle > 0
                && atVertex <= tolerances.VertexMm
                && within <= (edge.IsArc ? tolerances.VertexMm : tolerances.ChordMm)
                && (edge.IsArc || angle <= tolerances.WidestEdge.Radians);
            if (!isPart)
            {
                return null;
            }

            total += angle;
            largest = Math.Max(largest, Math.Max(atVertex, within));
        }

        return Math.Abs(total - Math.Abs(sweep)) <= MostAngleError ? largest : null;
    }

    private static double AngleOf(in Edge edge, Point centre)
    {
        if (edge.IsArc)
        {
            return edge.Sweep.Radians;
        }

        Vector from = edge.Start - centre;
        Vector to = edge.End - centre;
        return Math.Atan2(from.Cross(to), from.Dot(to));
    }

    // The edge passes no nearer than the line it lies on, which both ends on the circle make one and the same.
    private static double NearestToCentre(in Edge edge, Point centre) =>
        Math.Abs((edge.Start - centre).Cross(edge.Chord)) / edge.Chord.Length;
}
