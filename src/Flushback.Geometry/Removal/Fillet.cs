using Flushback.Geometry.Crossings;

namespace Flushback.Geometry.Removal;

/// <summary>A round that touches two edges of an outline, in place of what lies between them. Exact on lines and arcs.</summary>
/// <remarks>
/// The centre lies at the radius from both carriers: where a line moved sideways, or a circle with the same centre and a
/// radius smaller or larger by that of the round, meets another (elementary geometry).
/// </remarks>
public static class Fillet
{
    // How far beyond an end of an edge a round may touch it, by rounding, in millimetres.
    private const double AtEndMm = 1e-9;

    /// <summary>Rounds what lies between two edges.</summary>
    /// <param name="outline">The outline, counter-clockwise.</param>
    /// <param name="before">The edge before the corner.</param>
    /// <param name="after">The edge after the corner; all edges between the two go.</param>
    /// <param name="radiusMm">Radius, above zero.</param>
    /// <param name="convex">True to round a corner that points out, false one that points in.</param>
    /// <returns>What is left, or <see cref="CutFailure.NoRoundFits"/>; exactly one of the two.</returns>
    public static (CutOutline? Cut, CutFailure? Failure) Of(
        Outline outline,
        int before,
        int after,
        double radiusMm,
        bool convex = true
    )
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(radiusMm);
        Edge first = outline.Edges[before];
        Edge second = outline.Edges[after];
        return Between(first, second, radiusMm, convex) is { } round
            ? (Rebuild(outline, before, after, round), null)
            : (null, CutFailure.NoRoundFits);
    }

    /// <summary>The round between two edges, the first leading to the corner and the second away from it.</summary>
    /// <returns>Null when no circle of this radius touches both.</returns>
    public static Edge? Between(in Edge first, in Edge second, double radiusMm, bool convex = true)
    {
        double side = convex ? radiusMm : -radiusMm;
        if (Moved(first, side) is not { } a || Moved(second, side) is not { } b)
        {
            return null;
        }

        int count = Carriers.CommonPoints(a, b, out Point one, out Point other);
        Edge? best = null;
        foreach (Point centre in new[] { one, other }.AsSpan()[..count])
        {
            bool nearer = best is not { } found || centre.DistanceTo(first.End) < found.Centre.DistanceTo(first.End);
            if (nearer && RoundAbout(first, second, centre, convex) is { } round)
            {
                best = round;
            }
        }

        return best;
    }

    /// <summary>The edge moved to the left by a distance (to the right when negative); null when nothing is left of an arc.</summary>
    private static Edge? Moved(in Edge edge, double leftMm)
    {
        if (!edge.IsArc)
        {
            Vector by = edge.Chord.Left.Normalized * leftMm;
            return new Edge(edge.Start + by, edge.End + by);
        }

        // Left of a counter-clockwise arc is towards its centre.
        double radius = edge.RadiusMm;
        double moved = radius - (Math.Sign(edge.Bulge) * leftMm);
        if (moved <= AtEndMm)
        {
            return null;
        }

        Point centre = edge.Centre;
        double scale = moved / radius;
        return new Edge(centre + ((edge.Start - centre) * scale), centre + ((edge.End - centre) * scale), edge.Bulge);
    }

    private static Edge? RoundAbout(in Edge first, in Edge second, Point centre, bool convex)
    {
        if (Foot(first, centre) is not { } enters || Foot(second, centre) is not { } leaves)
        {
            return null;
        }

        Vector start = enters - centre;
        Vector end = leaves - centre;
        double turn = Math.Atan2(start.Cross(end), start.Dot(end));
        turn =
            convex && turn < 0 ? turn + Math.Tau
            : !convex && turn > 0 ? turn - Math.Tau
            : turn;

        // A corner turns less than half a circle; more is the round on the far side of the carriers.
        return Math.Abs(turn) is > 0 and < Math.PI ? Edge.Arc(enters, leaves, new Angle(turn)) : null;
    }

    /// <summary>The place of an edge nearest to a centre; null when the edge does not reach so far.</summary>
    private static Point? Foot(in Edge edge, Point centre)
    {
        // The touching point lies on the ray from the arc's centre through that of the round.
        Point onCarrier = edge.IsArc
            ? edge.Centre + ((centre - edge.Centre).Normalized * edge.RadiusMm)
            : edge.Start + (edge.Chord * (edge.Chord.Dot(centre - edge.Start) / edge.Chord.LengthSquared));
        return EdgePosition.TryFractionAt(edge, onCarrier, AtEndMm, out double fraction)
            ? edge.PointAt(fraction)
            : null;
    }

    private static CutOutline Rebuild(Outline outline, int before, int after, in Edge round)
    {
        int count = outline.Edges.Length;
        ChainEdit edit = new();
        Edge first = outline.Edges[before];
        Edge second = outline.Edges[after];
        double enters = EdgePosition.FractionAt(first, round.Start);
        double leaves = EdgePosition.FractionAt(second, round.End);
        edit.Add(round, CutOutline.New);
        edit.Add(second.Part(Math.Clamp(leaves, 0, 1), 1), after);
        for (int i = (after + 1) % count; i != before; i = (i + 1) % count)
        {
            edit.Add(outline.Edges[i], i);
        }

        edit.Add(first.Part(0, Math.Clamp(enters, 0, 1)), before);
        return edit.Finish(outline);
    }
}
