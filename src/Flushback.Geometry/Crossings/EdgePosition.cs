namespace Flushback.Geometry.Crossings;

/// <summary>Fractions of the length at which an edge passes points of its carrier.</summary>
internal static class EdgePosition
{
    /// <summary>The fraction at a point of the carrier; below 0 or above 1 when the edge does not reach it.</summary>
    public static double FractionAt(in Edge edge, Point onCarrier)
    {
        if (edge.IsArc && !edge.HasFarCentre)
        {
            return edge.FractionAtDirection(onCarrier - edge.Centre);
        }

        Vector chord = edge.Chord;
        double alongChord = chord.Dot(onCarrier - edge.Start) / chord.LengthSquared;
        if (!edge.IsArc)
        {
            return alongChord;
        }

        // From the middle of the arc a turn t moves along the chord by r sin t: no centre, so no digits go to it.
        double sweep = edge.Sweep.Radians;
        double sine = ((2 * alongChord) - 1) * Math.Sin(sweep / 2);
        return 0.5 + (Math.Asin(Math.Clamp(sine, -1, 1)) / sweep);
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
