using Flushback.Geometry;
using Flushback.Geometry.Distances;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using Area = NetTopologySuite.Geometries.Geometry;
using Point = Flushback.Geometry.Point;

namespace Flushback.Inspection.Tests.Referee;

/// <summary>Narrow places of a part by brute force: every pair of many points on its border, looked at one by one.</summary>
/// <remarks>
/// Knows nothing of how the inspection finds them. A pair counts when no other pair near it, moved by a few points either
/// way on either side, is nearer together, and the way between the two lies in the metal.
/// </remarks>
internal static class SampledWebs
{
    private const int Window = 7;

    /// <summary>Lengths of all such ways, shortest first.</summary>
    /// <param name="outer">The outer contour.</param>
    /// <param name="holes">The holes.</param>
    /// <param name="stepMm">About how far the points lie apart.</param>
    /// <param name="isOutside">True to look at what is not metal instead.</param>
    public static List<double> Of(Outline outer, IReadOnlyList<Outline> holes, double stepMm, bool isOutside = false)
    {
        Point[][] loops = [Sampled(outer, stepMm), .. holes.Select(hole => Sampled(hole, stepMm))];
        Area metal = AreaOf(loops);
        Area area = metal;
        if (isOutside)
        {
            Envelope frame = new(metal.EnvelopeInternal);
            frame.ExpandBy(1000);
            area = GeometryFactory.Default.ToGeometry(frame).Difference(metal);
        }

        // The chords of arcs lie a little inside or outside; a way that only grazes them is still one.
        IPreparedGeometry roomy = PreparedGeometryFactory.Prepare(area.Buffer(stepMm * stepMm / 4));
        List<double> found = [];
        for (int a = 0; a < loops.Length; a++)
        {
            for (int b = a; b < loops.Length; b++)
            {
                Look(loops[a], loops[b], a == b, roomy, found);
            }
        }

        found.Sort();
        return found;
    }

    /// <summary>Whether both ends of a web lie on the border and no way between points next to them is shorter.</summary>
    public static bool IsLeastAround(WebMeasure web, IReadOnlyList<Outline> loops)
    {
        // As far as the next vertex: how the distance changes beyond that is another matter.
        double reach = loops
            .SelectMany(loop => loop.Edges)
            .SelectMany(edge => new[] { edge.Start.DistanceTo(web.From), edge.Start.DistanceTo(web.To) })
            .Where(distance => distance > 1e-9)
            .Append(0.01)
            .Append(web.ThicknessMm / 100)
            .Min();
        IEnumerable<Point> from = Around(web.From, loops, reach);
        IEnumerable<Point> to = Around(web.To, loops, reach);
        if (ParallelAt(web, loops) is var (one, other))
        {
            // Parallel to rounding: the narrower end of the stretch is its width, whatever comes after it.
            from = from.Where(p => Distance.Between(p, one).DistanceMm < 1e-9);
            to = to.Where(p => Distance.Between(p, other).DistanceMm < 1e-9);
        }

        // What stands square to within a thousandth counts as square, so a way may be as much shorter.
        double slack = 2e-3 * reach;
        return from.All(p => to.All(q => p.DistanceTo(q) >= web.ThicknessMm - slack))
            && Math.Abs(web.From.DistanceTo(web.To) - web.ThicknessMm) < 1e-9;
    }

    /// <summary>Whether a web's way lies in the metal, by points along it.</summary>
    public static bool IsInMetal(WebMeasure web, (Outline Outer, Outline[] Holes) part) =>
        Enumerable
            .Range(1, 99)
            .Select(i => web.From + ((web.To - web.From) * (i / 100.0)))
            .All(p => part.Outer.Contains(p) && Array.TrueForAll(part.Holes, hole => hole.SignedDistanceMm(p) < 1e-9));

    /// <summary>Two lines at the ends of a web that are parallel to within a thousandth; null when there are none.</summary>
    private static (Edge One, Edge Other)? ParallelAt(WebMeasure web, IReadOnlyList<Outline> loops)
    {
        Edge[] lines = [.. loops.SelectMany(loop => loop.Edges).Where(edge => !edge.IsArc)];
        return (
            from one in lines
            where Distance.Between(web.From, one).DistanceMm < 1e-9
            from other in lines
            where Distance.Between(web.To, other).DistanceMm < 1e-9
            where Math.Abs(one.TangentAt(0).Cross(other.TangentAt(0))) < 1e-3
            select ((Edge, Edge)?)(one, other)
        ).FirstOrDefault();
    }

    /// <summary>A place on the border and places before and after it.</summary>
    private static Point[] Around(Point at, IReadOnlyList<Outline> loops, double reach)
    {
        Outline loop = loops.MinBy(loop => Distance.Between(at, loop).DistanceMm)!;
        int count = loop.Edges.Length;
        int edge = Enumerable.Range(0, count).MinBy(i => Distance.Between(at, loop.Edges[i]).DistanceMm);
        double along = loop.Edges[edge].LengthMm * Fraction(loop.Edges[edge], at);
        return [.. Enumerable.Range(-10, 21).Select(i => At(along + (i * reach / 10)))];

        Point At(double distance)
        {
            int i = edge;
            for (; distance < 0; distance += loop.Edges[i].LengthMm)
            {
                i = (i + count - 1) % count;
            }

            for (; distance > loop.Edges[i].LengthMm; i = (i + 1) % count)
            {
                distance -= loop.Edges[i].LengthMm;
            }

            return loop.Edges[i].PointAt(distance / loop.Edges[i].LengthMm);
        }

        static double Fraction(Edge on, Point at)
        {
            // By trisection: the distance to a point on the edge falls and rises once along less than half a turn.
            double low = 0;
            double high = 1;
            double best = Enumerable.Range(0, 101).MinBy(i => on.PointAt(i / 100.0).DistanceTo(at)) / 100.0;
            (low, high) = (Math.Max(0, best - 0.01), Math.Min(1, best + 0.01));
            for (int i = 0; i < 100; i++)
            {
                double third = (high - low) / 3;
                bool isLeft = on.PointAt(low + third).DistanceTo(at) < on.PointAt(high - third).DistanceTo(at);
                (low, high) = isLeft ? (low, high - third) : (low + third, high);
            }

            return (low + high) / 2;
        }
    }

    private static void Look(Point[] one, Point[] other, bool isSame, IPreparedGeometry area, List<double> found)
    {
        for (int i = 0; i < one.Length; i++)
        {
            for (int j = isSame ? i + 1 : 0; j < other.Length; j++)
            {
                int apart = Math.Min(j - i, one.Length - (j - i));
                if (isSame && apart <= 2 * Window)
                {
                    continue;
                }

                double distance = one[i].DistanceTo(other[j]);
                if (IsLeastAround(one, other, i, j, distance) && Lies(area, one[i], other[j]))
                {
                    found.Add(distance);
                }
            }
        }
    }

    private static bool IsLeastAround(Point[] one, Point[] other, int i, int j, double distance)
    {
        // The nearest neighbours first: they say no to nearly every pair.
        for (int reach = 1; reach <= Window; reach += Window - 1)
        {
            for (int di = -reach; di <= reach; di++)
            {
                Point p = one[(i + di + one.Length) % one.Length];
                for (int dj = -reach; dj <= reach; dj++)
                {
                    if (p.DistanceTo(other[(j + dj + other.Length) % other.Length]) < distance - 1e-9)
                    {
                        return false;
                    }
                }
            }
        }

        return true;
    }

    private static bool Lies(IPreparedGeometry area, Point from, Point to) =>
        area.Covers(
            GeometryFactory.Default.CreateLineString([new Coordinate(from.X, from.Y), new Coordinate(to.X, to.Y)])
        );

    private static Polygon AreaOf(Point[][] loops)
    {
        LinearRing[] rings =
        [
            .. loops.Select(loop =>
                GeometryFactory.Default.CreateLinearRing([
                    .. loop.Append(loop[0]).Select(p => new Coordinate(p.X, p.Y)),
                ])
            ),
        ];
        return GeometryFactory.Default.CreatePolygon(rings[0], rings[1..]);
    }

    private static Point[] Sampled(Outline outline, double stepMm) =>
        [
            .. outline.Edges.SelectMany(edge =>
            {
                int count = (int)Math.Ceiling(edge.LengthMm / stepMm);
                return Enumerable.Range(0, count).Select(i => edge.PointAt((double)i / count));
            }),
        ];
}
