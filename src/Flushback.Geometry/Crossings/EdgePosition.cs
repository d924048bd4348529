namespace Flushback.Geometry.Crossings;

/// <summary>Fractions of the length at which an edge passes points of its carrier.</summary>
internal static class EdgePosition
{
    /// <summary>The fraction at a point of the carrier; below 0 or above 1 when the edge does not reach it.</summary>
    public static double FractionAt(in Edge edge, Point onCarrier)
    {
        if (edge.IsArc)
        {
            return edge.FractionAtDirection(onCarrier - edge.Centre);
        }

        Vector chord = edge.Chord;
        return chord.Dot(onCarrier - edge.Start) / chord.LengthSquared;
    }

    /// <summary>The fraction at a point of the carrier when the edge reaches it to within a tolerance.</summary>
    public static bool TryFractionAt(in Edge edge, Point onCarrier, double toleranceMm, out double fraction)
    {
        double raw = FractionAt(edge, onCarrier);
        double slack = toleranceMm / edge.LengthMm;
        fraction = Math.Clamp(raw, 0, 1);
        return raw >= -slack && raw <= 1 + slack;
    }

    /// <summary>Whether a fraction is one of the ends, to within a tolerance.</summary>
    public static bool IsEnd(in Edge edge, double fraction, double toleranceMm) =>
        Math.Min(fraction, 1 - fraction) * edge.LengthMm <= toleranceMm;
}
