namespace Flushback.Geometry.Crossings;

/// <summary>Where two edges meet, with every case told apart.</summary>
public static class Crossing
{
    /// <summary>The places where two edges meet.</summary>
    /// <param name="a">The first edge.</param>
    /// <param name="b">The second edge.</param>
    /// <param name="toleranceMm">
    /// How near edges count as touching: ends this near to the other edge touch it, circles and lines that pass by no
    /// more than this are tangent, edges that stay within it overlap. An arc no higher than this over its chord is taken
    /// as the chord. Zero asks for bare numbers, where a tangency is then a matter of rounding.
    /// </param>
    /// <remarks>
    /// Places between which the edges never part by more than the tolerance are one meeting, given once. Points are good
    /// to the tolerance or, where edges cross at an angle, to rounding.
    /// </remarks>
    public static Meetings Between(in Edge a, in Edge b, double toleranceMm)
    {
        if (a.Bounds.GapTo(b.Bounds) > toleranceMm)
        {
            return Meetings.None;
        }

        Edge first = Straightened(a, toleranceMm);
        Edge second = Straightened(b, toleranceMm);
        if (Overlaps.RunTogether(first, second, toleranceMm))
        {
            return Overlaps.Between(first, second, toleranceMm);
        }

        MeetingSearch search = new(first, second, toleranceMm);
        return search.Run();
    }

    private static Edge Straightened(in Edge edge, double toleranceMm) =>
        edge.IsArc && edge.SagittaMm <= toleranceMm ? edge with { Bulge = 0 } : edge;
}
