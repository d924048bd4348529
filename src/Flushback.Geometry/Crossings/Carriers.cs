namespace Flushback.Geometry.Crossings;

/// <summary>Common points of the carriers of two edges: the whole line, the whole circle.</summary>
internal static class Carriers
{
    private const double LeastSine = 1e-9;

    /// <summary>A common point of two edges, without tolerance; false when they only come near.</summary>
    public static bool TryCommonPoint(in Edge a, in Edge b, out Point common)
    {
        int count = CommonPoints(a, b, out Point first, out Point second);
        if (count > 0 && Holds(a, first) && Holds(b, first))
        {
            common = first;
            return true;
        }

        common = second;
        return count > 1 && Holds(a, second) && Holds(b, second);
    }

    /// <summary>
    /// Common points of the carriers: none, one (two lines) or two (equal where a carrier touches a circle). Parallel
    /// lines and circles about one centre have none here, even when they are the same.
    /// </summary>
    public static int CommonPoints(in Edge a, in Edge b, out Point first, out Point second)
    {
        int count = (a.IsArc, b.IsArc) switch
        {
            (false, false) => LineLine(a, b, out first, out second),
            (false, true) => LineCircle(a, b, out first, out second),
            (true, false) => LineCircle(b, a, out first, out second),
            (true, true) => CircleCircle(a, b, out first, out second),
        };
        if (count > 0 && (a.HasFarCentre || b.HasFarCentre))
        {
            first = Refined(first, a, b);
            second = Refined(second, a, b);
        }

        return count;
    }

    /// <summary>
    /// A common point with the digits that went to a far centre given back: Newton's step on the distances from both
    /// carriers, which are computed without their centres.
    /// </summary>
    private static Point Refined(Point p, in Edge a, in Edge b)
    {
        for (int step = 0; step < 2; step++)
        {
            Vector leftOfA = LeftNormalAt(a, p);
            Vector leftOfB = LeftNormalAt(b, p);
            double cross = leftOfA.Cross(leftOfB);
            if (Math.Abs(cross) < LeastSine)
            {
                // They run together here: a tangency, whose place along them no step can tell.
                break;
            }

            double byA = -a.LeftOfCarrierMm(p) / cross;
            double byB = -b.LeftOfCarrierMm(p) / cross;
            p += new Vector((byA * leftOfB.Y) - (byB * leftOfA.Y), (byB * leftOfA.X) - (byA * leftOfB.X));
        }

        return p;
    }

    private static Vector LeftNormalAt(in Edge edge, Point p)
    {
        if (!edge.IsArc)
        {
            return edge.Chord.Left.Normalized;
        }

        Vector towardsCentre = (edge.Centre - p).Normalized;
        return edge.Bulge > 0 ? towardsCentre : -towardsCentre;
    }

    private static int LineLine(in Edge a, in Edge b, out Point first, out Point second)
    {
        double cross = a.Chord.Cross(b.Chord);
        second = default;
        if (cross == 0)
        {
            first = default;
            return 0;
        }

        first = a.Start + (a.Chord * ((b.Start - a.Start).Cross(b.Chord) / cross));
        return 1;
    }

    private static int LineCircle(in Edge line, in Edge arc, out Point first, out Point second)
    {
        Vector direction = line.Chord.Normalized;
        Vector toCentre = arc.Centre - line.Start;
        double height = direction.Cross(toCentre);
        double radius = arc.RadiusMm;
        double halfChordSquared = (radius - height) * (radius + height);
        if (!(halfChordSquared >= 0))
        {
            first = second = default;
            return 0;
        }

        Point foot = line.Start + (direction * direction.Dot(toCentre));
        Vector halfChord = direction * Math.Sqrt(halfChordSquared);
        first = foot - halfChord;
        second = foot + halfChord;
        return 2;
    }

    private static int CircleCircle(in Edge a, in Edge b, out Point first, out Point second)
    {
        Vector between = b.Centre - a.Centre;
        double distance = between.Length;
        double sum = a.RadiusMm + b.RadiusMm;
        double difference = a.RadiusMm - b.RadiusMm;

        // Sixteen times the squared area of the triangle of the two centres and a common point (Heron, factored so that
        // nearly touching circles keep their digits).
        double heron = (sum - distance) * (sum + distance) * (distance - difference) * (distance + difference);
        if (distance == 0 || !(heron >= 0))
        {
            first = second = default;
            return 0;
        }

        Vector along = between * (1 / distance);
        double toRadicalLine = (distance + (difference * sum / distance)) / 2;
        Point foot = a.Centre + (along * toRadicalLine);
        Vector halfChord = along.Left * (Math.Sqrt(heron) / (2 * distance));
        first = foot - halfChord;
        second = foot + halfChord;
        return 2;
    }

    /// <summary>Whether the edge reaches a point of its carrier.</summary>
    private static bool Holds(in Edge edge, Point onCarrier)
    {
        if (edge.IsArc)
        {
            return edge.SpansDirection(onCarrier - edge.Centre);
        }

        double along = edge.Chord.Dot(onCarrier - edge.Start);
        return along >= 0 && along <= edge.Chord.LengthSquared;
    }
}
