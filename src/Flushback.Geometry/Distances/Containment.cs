namespace Flushback.Geometry.Distances;

/// <summary>Whether a point lies inside a closed chain of lines and arcs.</summary>
/// <remarks>
/// The inside of an outline is the polygon of its chords, with the piece between chord and arc added or taken away for
/// each arc; both parts are signs of polynomials, so nothing is flattened and no centre is needed. A point on a chord,
/// which is an ordinary inner point of the outline, must count on the same side in both parts: it is taken as moved by
/// less than any number to +x, and by less than that again to +y.
/// </remarks>
internal static class Containment
{
    /// <summary>Inside by the even-odd rule. Points of the border itself may fall on either side.</summary>
    public static bool IsInside(Point p, ReadOnlySpan<Edge> closedChain)
    {
        bool inside = false;
        foreach (ref readonly Edge edge in closedChain)
        {
            bool left = IsLeftOfChord(p, edge);
            inside ^= IsPassedByRay(p, edge, left);
            inside ^= edge.IsArc && IsBetweenChordAndArc(p, edge, left);
        }

        return inside;
    }

    private static bool IsLeftOfChord(Point p, in Edge edge)
    {
        Vector chord = edge.Chord;
        double cross = chord.Cross(p - edge.Start);
        return cross != 0 ? cross > 0 : chord.Y < 0 || (chord.Y == 0 && chord.X > 0);
    }

    /// <summary>Whether the ray from the point to +x passes the chord.</summary>
    private static bool IsPassedByRay(Point p, in Edge edge, bool left)
    {
        bool startAbove = edge.Start.Y > p.Y;
        bool endAbove = edge.End.Y > p.Y;
        return startAbove != endAbove && left == endAbove;
    }

    private static bool IsBetweenChordAndArc(Point p, in Edge arc, bool left)
    {
        // An arc lies right of its chord when it runs counter-clockwise, left of it otherwise.
        bool isCounterClockwise = arc.Bulge > 0;
        return left != isCounterClockwise && (arc.SideOfCarrier(p) > 0) == isCounterClockwise;
    }
}
