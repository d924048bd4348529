using Flushback.Geometry;

namespace Flushback.Inspection.Widths;

/// <summary>Ways across an area between two edges that stand square on both, or end at a vertex.</summary>
/// <remarks>
/// All in closed form: between two lines only where they are parallel; between a line and an arc through the foot of the
/// arc's centre on the line; between two arcs on the line of their centres, or anywhere where they share one centre; from a
/// vertex along the perpendicular of the other edge.
/// </remarks>
internal static class FacingPairs
{
    /// <summary>Hands over every way between two edges, and the vertices they begin at, that is least about both its ends.</summary>
    public static void Between(Border border, int a, int b, Action<Width> found)
    {
        Edge one = border.Edges[a];
        Edge other = border.Edges[b];
        switch (one.IsArc, other.IsArc)
        {
            case (false, false):
                Lines(border, a, b, found);
                break;
            case (false, true):
                LineAndArc(border, a, b, found);
                break;
            case (true, false):
                LineAndArc(border, b, a, found);
                break;
            default:
                Arcs(border, a, b, found);
                break;
        }

        VertexAndEdge(border, a, b, found);
        VertexAndEdge(border, b, a, found);
        WayAcross.Try(border, new Foot(a, one.Start), new Foot(b, other.Start), found);
    }

    private static void Lines(Border border, int a, int b, Action<Width> found)
    {
        Edge one = border.Edges[a];
        Edge other = border.Edges[b];
        Vector along = one.TangentAt(0);
        Vector back = other.TangentAt(0);
        if (along.Dot(back) > 0 || Math.Abs(along.Cross(back)) > FacingPoint.SquareRad)
        {
            return;
        }

        // They run against each other: what faces the start of one is near the end of the other.
        (Point From, Point To) first = WayAtEnd(
            one,
            other,
            along.Dot(other.End - one.Start) <= 0,
            one.Start,
            other.End
        );
        (Point From, Point To) last = WayAtEnd(
            one,
            other,
            along.Dot(other.Start - one.Start) >= one.Chord.Length,
            one.End,
            other.Start
        );
        if (along.Dot(last.From - first.From) <= WayAcross.ShortestMm)
        {
            return;
        }

        // Parallel to rounding only: the narrower end is the width, the middle where neither end is narrower.
        double difference = last.From.DistanceTo(last.To) - first.From.DistanceTo(first.To);
        (Point from, Point to) =
            Math.Abs(difference) <= WayAcross.ShortestMm
                ? (first.From.MidpointTo(last.From), first.To.MidpointTo(last.To))
            : difference < 0 ? last
            : first;
        Edge extent = new(first.From.MidpointTo(first.To), last.From.MidpointTo(last.To));
        WayAcross.Try(border, new Foot(a, from, along), new Foot(b, to, back), found, extent);
    }

    /// <summary>The way across at an end of what two lines share: from the vertex that ends it, square to the other line.</summary>
    private static (Point From, Point To) WayAtEnd(
        in Edge one,
        in Edge other,
        bool endsWithOne,
        Point ofOne,
        Point ofOther
    )
    {
        return endsWithOne ? (ofOne, FootOf(ofOne, other)) : (FootOf(ofOther, one), ofOther);

        static Point FootOf(Point p, in Edge line) => p - (line.TangentAt(0).Left * line.LeftOfCarrierMm(p));
    }

    private static void LineAndArc(Border border, int line, int arc, Action<Width> found)
    {
        Edge straight = border.Edges[line];
        Edge round = border.Edges[arc];
        Vector along = straight.TangentAt(0);
        Point centre = round.Centre;
        double foot = along.Dot(centre - straight.Start);
        if (foot <= 0 || foot >= straight.Chord.Length)
        {
            return;
        }

        Point from = straight.Start + (along * foot);
        for (int sign = -1; sign <= 1; sign += 2)
        {
            Vector radius = along.Left * (sign * round.RadiusMm);
            if (round.SpansDirection(radius))
            {
                WayAcross.Try(
                    border,
                    new Foot(line, from, along),
                    new Foot(arc, centre + radius, TangentOf(round, radius)),
                    found
                );
            }
        }
    }

    private static void Arcs(Border border, int a, int b, Action<Width> found)
    {
        Edge one = border.Edges[a];
        Edge other = border.Edges[b];
        Vector between = other.Centre - one.Centre;
        double distance = between.Length;
        if (distance <= FacingPoint.SquareRad * Math.Min(one.RadiusMm, other.RadiusMm))
        {
            ArcsAboutOneCentre(border, a, b, found);
            return;
        }

        for (int signs = 0; signs < 4; signs++)
        {
            Vector first = between * (((signs & 1) == 0 ? 1 : -1) * one.RadiusMm / distance);
            Vector second = between * (((signs & 2) == 0 ? 1 : -1) * other.RadiusMm / distance);
            if (one.SpansDirection(first) && other.SpansDirection(second))
            {
                WayAcross.Try(
                    border,
                    new Foot(a, one.Centre + first, TangentOf(one, first)),
                    new Foot(b, other.Centre + second, TangentOf(other, second)),
                    found
                );
            }
        }
    }

    /// <summary>Two arcs of a band: equally far all along, so any common direction will do; the narrowest of a few is taken.</summary>
    private static void ArcsAboutOneCentre(Border border, int a, int b, Action<Width> found)
    {
        Edge one = border.Edges[a];
        Edge other = border.Edges[b];
        Point centre = one.Centre;
        ReadOnlySpan<Vector> directions =
        [
            one.PointAt(0.5) - centre,
            other.PointAt(0.5) - centre,
            one.Start - centre,
            one.End - centre,
            other.Start - centre,
            other.End - centre,
        ];
        (double Least, Vector First, Vector Second) best = (double.PositiveInfinity, default, default);
        (double From, double To) common = (1, 0);
        foreach (Vector direction in directions)
        {
            Vector unit = direction.Normalized;
            (Vector first, Vector second) = (unit * one.RadiusMm, unit * other.RadiusMm);
            if (!one.SpansDirection(first) || !other.SpansDirection(second))
            {
                continue;
            }

            double distance = (centre + first).DistanceTo(other.Centre + second);
            double at = one.FractionAtDirection(direction);
            common = (Math.Min(common.From, at), Math.Max(common.To, at));
            best = distance < best.Least - WayAcross.ShortestMm ? (distance, first, second) : best;
        }

        if (double.IsFinite(best.Least))
        {
            Vector half = ((other.Centre + best.Second) - (centre + best.First)) * 0.5;
            double scale = 1 + (half.Dot(best.First) / best.First.LengthSquared);
            Edge along = one.Part(common.From, common.To);
            Edge extent = along with
            {
                Start = centre + ((along.Start - centre) * scale),
                End = centre + ((along.End - centre) * scale),
            };
            WayAcross.Try(
                border,
                new Foot(a, centre + best.First, TangentOf(one, best.First)),
                new Foot(b, other.Centre + best.Second, TangentOf(other, best.Second)),
                found,
                extent
            );
        }
    }

    private static void VertexAndEdge(Border border, int vertex, int edge, Action<Width> found)
    {
        Point from = border.Edges[vertex].Start;
        Edge other = border.Edges[edge];
        if (!other.IsArc)
        {
            Vector along = other.TangentAt(0);
            double foot = along.Dot(from - other.Start);
            if (foot > 0 && foot < other.Chord.Length)
            {
                WayAcross.Try(
                    border,
                    new Foot(vertex, from),
                    new Foot(edge, other.Start + (along * foot), along),
                    found
                );
            }

            return;
        }

        Vector towards = from - other.Centre;
        if (towards.Length <= WayAcross.ShortestMm)
        {
            // The vertex is the centre: the whole arc is equally far.
            WayAcross.Try(
                border,
                new Foot(vertex, from),
                new Foot(edge, other.PointAt(0.5), other.TangentAt(0.5)),
                found
            );
            return;
        }

        for (int sign = -1; sign <= 1; sign += 2)
        {
            Vector radius = towards.Normalized * (sign * other.RadiusMm);
            if (other.SpansDirection(radius))
            {
                WayAcross.Try(
                    border,
                    new Foot(vertex, from),
                    new Foot(edge, other.Centre + radius, TangentOf(other, radius)),
                    found
                );
            }
        }
    }

    private static Vector TangentOf(in Edge arc, Vector radius) =>
        (arc.Bulge > 0 ? radius.Left : radius.Right).Normalized;
}
