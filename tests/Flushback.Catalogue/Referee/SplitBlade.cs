using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;

namespace Flushback.Catalogue.Referee;

/// <summary>
/// A blade cut from the notch's inner corner to the tip, straight or by way of the middle of a hollow point: below it all that can carry the spring from
/// underneath, above it the shoulder and the spine.
/// </summary>
/// <remarks>
/// Near its open stop an undercut blade holds the nose from above as well, and at one blade angle the spring then has
/// two free intervals. Against the lower part alone there is only one: all rotations from the lowest free one upwards.
/// That is the interval reached by continuity from mid-swing, where the shoulder is away.
/// </remarks>
/// <param name="Below">Open flat, half-stop face, closed face, kick, edge.</param>
/// <param name="Above">Shoulder and spine; null when the shape has no notch.</param>
internal sealed record SplitBlade(Polygon Below, Polygon? Above)
{
    /// <summary>A dent shallower than this is a hollow face, not a notch.</summary>
    private const double LeastNotchDepthMm = 0.8;

    /// <summary>The notch lies at the nose: no farther from the drawn spring than this.</summary>
    private const double MostCornerDistanceMm = 2;

    /// <summary>Cuts a blade drawn open, with the spring as drawn to say which of its dents is the notch.</summary>
    public static SplitBlade Cut(Coordinate[] ring, Polygon spring)
    {
        GeometryFactory factory = spring.Factory;
        Coordinate[] open = ring[..^1];
        int corner = NotchCorner(open, spring);
        if (corner < 0)
        {
            return new SplitBlade(factory.CreatePolygon(ring), null);
        }

        int tip = Enumerable.Range(0, open.Length).MaxBy(i => open[i].X);
        foreach (Coordinate? by in new[] { null, BeforeTip(factory.CreatePolygon(ring), open[tip], open[corner]) })
        {
            Polygon below = factory.CreatePolygon(Walk(open, corner, tip, by));
            Polygon above = factory.CreatePolygon(Walk(open, tip, corner, by));
            if (below.IsValid && above.IsValid)
            {
                return new SplitBlade(below, above);
            }
        }

        throw new ArgumentException("The line from the notch's inner corner to the tip leaves the blade.");
    }

    /// <summary>The middle between edge and spine a third of the way back from the tip.</summary>
    private static Coordinate BeforeTip(Polygon blade, Coordinate tip, Coordinate corner)
    {
        Envelope box = blade.EnvelopeInternal;
        double x = tip.X - ((tip.X - corner.X) / 3);
        LineString across = blade.Factory.CreateLineString([new(x, box.MinY - 1), new(x, box.MaxY + 1)]);
        return blade.Intersection(across).Centroid.Coordinate;
    }

    /// <summary>The deepest vertex of the dent in which the nose lies, or -1.</summary>
    private static int NotchCorner(Coordinate[] open, Polygon spring)
    {
        HashSet<Coordinate> onHull = [.. new ConvexHull(open, spring.Factory).GetConvexHull().Coordinates];
        int[] hull = [.. Enumerable.Range(0, open.Length).Where(i => onHull.Contains(open[i]))];
        int best = -1;
        double nearest = MostCornerDistanceMm;
        for (int i = 0; i < hull.Length; i++)
        {
            int from = hull[i];
            int to = hull[(i + 1) % hull.Length];
            int inside = (to - from + open.Length) % open.Length;
            int deepest = Enumerable
                .Range(from, inside)
                .Select(k => k % open.Length)
                .MaxBy(k => DistanceComputer.PointToLinePerpendicular(open[k], open[from], open[to]));
            double depth = DistanceComputer.PointToLinePerpendicular(open[deepest], open[from], open[to]);
            double distance = depth > LeastNotchDepthMm ? Distance(open[deepest], spring) : double.MaxValue;
            if (distance < nearest)
            {
                (nearest, best) = (distance, deepest);
            }
        }

        return best;
    }

    private static double Distance(Coordinate c, Polygon spring) => spring.Distance(spring.Factory.CreatePoint(c));

    private static Coordinate[] Walk(Coordinate[] open, int from, int to, Coordinate? by)
    {
        int steps = (to - from + open.Length) % open.Length;
        IEnumerable<int> indices = Enumerable.Range(0, steps + 1).Select(i => (from + i) % open.Length);
        IEnumerable<Coordinate> walked = indices.Select(i => open[i].Copy());
        return [.. by is null ? walked : walked.Append(by.Copy()), open[from].Copy()];
    }
}
