namespace Flushback.Geometry.Removal;

/// <summary>The line or circle a tool leaves behind: what lies on its right, outside the metal, is taken off.</summary>
/// <remarks>
/// A straight curve takes all on the right of an endless line, a wheel all inside a circle. Directed like an edge of a
/// counter-clockwise outline: the metal that stays lies on the left.
/// </remarks>
public readonly record struct CuttingCurve
{
    private CuttingCurve(Edge carrier) => Carrier = carrier;

    /// <summary>A stretch of the curve; it gives direction and bend, not extent.</summary>
    public Edge Carrier { get; }

    /// <summary>A straight cut through two points, from the first to the second.</summary>
    public static CuttingCurve Straight(Point from, Point to) => new(new Edge(from, to));

    /// <summary>The hollow a round wheel leaves, through two points.</summary>
    /// <param name="from">First point of the cut, in the direction of travel.</param>
    /// <param name="to">Second point of the cut.</param>
    /// <param name="radiusMm">Radius of the wheel, at least half the distance between the points.</param>
    /// <exception cref="ArgumentOutOfRangeException">The radius does not reach from one point to the other.</exception>
    public static CuttingCurve Wheel(Point from, Point to, double radiusMm)
    {
        double halfChord = from.DistanceTo(to) / 2;
        ArgumentOutOfRangeException.ThrowIfLessThan(radiusMm, halfChord);

        // sin of half the sweep is half the chord over the radius; the bulge is tan of a quarter of the sweep.
        double sweep = 2 * Math.Asin(Math.Min(1, halfChord / radiusMm));
        return new CuttingCurve(new Edge(from, to, -Math.Tan(sweep / 4)));
    }

    /// <summary>A hollow between two points, so deep in its middle.</summary>
    /// <param name="from">First point of the cut, in the direction of travel.</param>
    /// <param name="to">Second point of the cut.</param>
    /// <param name="depthMm">Depth under the chord, above zero, at most half the chord.</param>
    /// <exception cref="ArgumentOutOfRangeException">The depth is not above zero or makes more than a half circle.</exception>
    public static CuttingCurve Hollow(Point from, Point to, double depthMm)
    {
        double halfChord = from.DistanceTo(to) / 2;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(depthMm);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(depthMm, halfChord);
        return new CuttingCurve(new Edge(from, to, -depthMm / halfChord));
    }

    /// <summary>How far a point lies inside what is taken off, in millimetres; negative in what stays.</summary>
    public double DepthMm(Point p) => -Carrier.LeftOfCarrierMm(p);

    /// <summary>The cut from one of its points to another.</summary>
    public Edge Between(Point from, Point to)
    {
        if (!Carrier.IsArc)
        {
            return new Edge(from, to);
        }

        Vector start = from - Carrier.Centre;
        Vector end = to - Carrier.Centre;
        double turn = Math.Atan2(start.Cross(end), start.Dot(end));

        // A wheel's hollow is travelled clockwise.
        return Edge.Arc(from, to, new Angle(turn > 0 ? turn - Math.Tau : turn));
    }
}
