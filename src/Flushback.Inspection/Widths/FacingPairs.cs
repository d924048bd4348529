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
    /// <summary>Ways shorter than this are the joint of two edges.</summary>
    private const double NoWayMm = 1e-6;

    /// <summary>Of two curvatures, what still counts as parallel: a bow of a thousandth of the distance's own curvature.</summary>
    private const double ParallelShare = 1e-3;

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
        Try(border, a, null, one.Start, b, null, other.Start, found);
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

        double length = one.Chord.Length;
        double low = Math.Max(0, Math.Min(along.Dot(other.Start - one.Start), along.Dot(other.End - one.Start)));
        double high = Math.Min(length, Math.Max(along.Dot(other.Start - one.Start), along.Dot(other.End - one.Start)));
        if (high - low <= NoWayMm)
        {
            return;
        }

        // Parallel to rounding only: the narrower end is the width, the middle where neither end is narrower.
        double atLow = Math.Abs(other.LeftOfCarrierMm(one.Start + (along * low)));
        double atHigh = Math.Abs(other.LeftOfCarrierMm(one.Start + (along * high)));
        double at =
            Math.Abs(atLow - atHigh) <= NoWayMm ? (low + high) / 2
            : atLow < atHigh ? low
            : high;
        Point from = one.Start + (along * at);
        Point to = from - (back.Left * other.LeftOfCarrierMm(from));
        Vector half = (to - from) * 0.5;
        Edge extent = new(one.Start + (along * low) + half, one.Start + (along * high) + half);
        Try(border, a, along, from, b, back, to, found, extent);
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
                Try(border, line, along, from, arc, TangentOf(round, radius), centre + radius, found);
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
                Try(
                    border,
                    a,
                    TangentOf(one, first),
                    one.Centre + first,
                    b,
                    TangentOf(other, second),
                    other.Centre + second,
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
            best = distance < best.Least - NoWayMm ? (distance, first, second) : best;
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
            Try(
                border,
                a,
                TangentOf(one, best.First),
                centre + best.First,
                b,
                TangentOf(other, best.Second),
                other.Centre + best.Second,
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
                Try(border, vertex, null, from, edge, along, other.Start + (along * foot), found);
            }

            return;
        }

        Vector towards = from - other.Centre;
        if (towards.Length <= NoWayMm)
        {
            // The vertex is the centre: the whole arc is equally far.
            Try(border, vertex, null, from, edge, other.TangentAt(0.5), other.PointAt(0.5), found);
            return;
        }

        for (int sign = -1; sign <= 1; sign += 2)
        {
            Vector radius = towards.Normalized * (sign * other.RadiusMm);
            if (other.SpansDirection(radius))
            {
                Try(border, vertex, null, from, edge, TangentOf(other, radius), other.Centre + radius, found);
            }
        }
    }

    private static Vector TangentOf(in Edge arc, Vector radius) =>
        (arc.Bulge > 0 ? radius.Left : radius.Right).Normalized;

    /// <summary>Hands over a way when it leads into the area at both ends and is least about both.</summary>
    private static void Try(
        Border border,
        int a,
        Vector? tangentOfA,
        Point from,
        int b,
        Vector? tangentOfB,
        Point to,
        Action<Width> found,
        Edge? extent = null
    )
    {
        double distance = from.DistanceTo(to);
        if (distance <= NoWayMm)
        {
            return;
        }

        Vector across = (to - from) * (1 / distance);
        if (
            PointOf(border, a, tangentOfA, from, across) is { } one
            && PointOf(border, b, tangentOfB, to, -across) is { } other
            && IsLeast(distance, one.Forward, other.Backward)
            && IsLeast(distance, one.Backward, other.Forward)
        )
        {
            found(new Width(distance, from, to, a, b, extent ?? new Edge(from.MidpointTo(to), from.MidpointTo(to))));
        }
    }

    private static FacingPoint? PointOf(Border border, int edge, Vector? tangent, Point at, Vector across) =>
        tangent is { } along
            ? FacingPoint.Within(border, edge, at, along, across)
            : FacingPoint.AtStart(border, edge, across);

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
