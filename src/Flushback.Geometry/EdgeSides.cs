namespace Flushback.Geometry;

/// <content>On which side of an edge a point lies, and which directions from its centre an arc covers.</content>
public readonly partial record struct Edge
{
    /// <summary>
    /// Positive for a point left of the whole line or circle the edge lies on, in the direction of travel; negative right
    /// of it, zero on it. Left of a counter-clockwise arc is inside its circle.
    /// </summary>
    /// <remarks>Not a length: its scale differs from edge to edge. A polynomial in all coordinates, without the centre.</remarks>
    public double SideOfCarrier(Point p)
    {
        Vector fromStart = p - Start;
        double side = Chord.Cross(fromStart);
        return IsArc ? ((1 - (Bulge * Bulge)) * side) - (2 * Bulge * fromStart.Dot(p - End)) : side;
    }

    /// <summary>
    /// Distance in millimetres from the whole line or circle the edge lies on, positive left of it in the direction of
    /// travel. Not defined for a line without length.
    /// </summary>
    public double LeftOfCarrierMm(Point p)
    {
        // For an arc the side is 2 |b| (r^2 - rho^2), by sign of travel; r - rho follows without cancelling.
        double scale = IsArc ? 2 * Math.Abs(Bulge) * ((p - Centre).Length + RadiusMm) : Chord.Length;
        return SideOfCarrier(p) / scale;
    }

    /// <summary>True when the ray from the arc's centre in a direction (not zero) meets the arc. For arcs only.</summary>
    /// <remarks>Both ends belong to the arc: their own directions, as differences from <see cref="Centre"/>, are met.</remarks>
    public bool SpansDirection(Vector fromCentre)
    {
        Point centre = Centre;
        Vector start = Start - centre;
        Vector end = End - centre;
        if (fromCentre == start || fromCentre == end)
        {
            // The ends of a half circle lie opposite each other, where the signs below are a matter of rounding.
            return true;
        }

        (Vector first, Vector last) = Bulge > 0 ? (start, end) : (end, start);
        bool afterFirst = first.Cross(fromCentre) >= 0;
        bool beforeLast = fromCentre.Cross(last) >= 0;

        // Up to a half circle both must hold; beyond it only what is after the end and before the start is off the arc.
        return Math.Abs(Bulge) <= 1 ? afterFirst && beforeLast : afterFirst || beforeLast;
    }

    /// <summary>Fraction of the sweep at which the arc passes a direction from its centre; in [0, 1] when on the arc.</summary>
    public double FractionAtDirection(Vector fromCentre)
    {
        Vector start = Start - Centre;
        double turn = Math.Atan2(start.Cross(fromCentre), start.Dot(fromCentre));
        double sweep = Sweep.Radians;
        if (sweep > 0 && turn < 0)
        {
            turn += Math.Tau;
        }
        else if (sweep < 0 && turn > 0)
        {
            turn -= Math.Tau;
        }

        double fraction = turn / sweep;

        // Just before the start reads as nearly a full turn: bring it back below zero.
        double fullTurn = Math.Tau / Math.Abs(sweep);
        return fraction > (1 + fullTurn) / 2 ? fraction - fullTurn : fraction;
    }
}
