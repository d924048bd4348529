namespace Flushback.Geometry.Distances;

/// <summary>Nearest point of one line or arc.</summary>
internal static class PointToEdge
{
    public static Nearest Between(Point p, in Edge edge) => edge.IsArc ? ToArc(p, edge) : ToLine(p, edge);

    private static Nearest ToLine(Point p, in Edge line)
    {
        Vector chord = line.Chord;
        double along = chord.Dot(p - line.Start);
        if (!(along > 0))
        {
            return Nearest.From(p, line.Start);
        }

        double lengthSquared = chord.LengthSquared;
        if (along >= lengthSquared)
        {
            return Nearest.From(p, line.End);
        }

        // The height over the chord keeps its digits where the difference from the foot would cancel.
        double height = chord.Cross(p - line.Start) / Math.Sqrt(lengthSquared);
        return new Nearest(Math.Abs(height), p, line.Start + (chord * (along / lengthSquared)));
    }

    private static Nearest ToArc(Point p, in Edge arc)
    {
        Vector fromCentre = p - arc.Centre;
        double radial = fromCentre.Length;
        if (radial == 0)
        {
            // Every point of the arc is equally near to its centre.
            return new Nearest(arc.RadiusMm, p, arc.Start);
        }

        if (!arc.SpansDirection(fromCentre))
        {
            Nearest start = Nearest.From(p, arc.Start);
            return Nearest.Shorter(start, Nearest.From(p, arc.End));
        }

        double left = arc.LeftOfCarrierMm(p);
        double outside = arc.Bulge > 0 ? -left : left;
        return new Nearest(Math.Abs(left), p, p - (fromCentre * (outside / radial)));
    }
}
