namespace Flushback.Geometry.Tests.Shapes;

/// <summary>A referee for distances that knows only points of edges: samples both, then zooms in on the nearest pairs.</summary>
internal static class SampledDistance
{
    private const int Coarse = 40;
    private const int Fine = 8;
    private const int Zooms = 14;
    private const int MostStarts = 12;

    /// <summary>An upper bound of the distance, close to it.</summary>
    public static double Between(Edge a, Edge b)
    {
        double best = double.PositiveInfinity;
        foreach ((double onA, double onB) in NearestPairs(a, b))
        {
            best = Math.Min(best, Zoom(a, onA, b, onB));
        }

        return best;
    }

    private static IEnumerable<(double OnA, double OnB)> NearestPairs(Edge a, Edge b)
    {
        Point[] onB = [.. Enumerable.Range(0, Coarse + 1).Select(j => b.PointAt((double)j / Coarse))];
        return Enumerable
            .Range(0, Coarse + 1)
            .Select(i =>
            {
                Point onA = a.PointAt((double)i / Coarse);
                int nearest = Enumerable.Range(0, Coarse + 1).MinBy(j => onA.DistanceTo(onB[j]));
                return (OnA: (double)i / Coarse, OnB: (double)nearest / Coarse, Away: onA.DistanceTo(onB[nearest]));
            })
            .OrderBy(pair => pair.Away)
            .Take(MostStarts)
            .Select(pair => (pair.OnA, pair.OnB));
    }

    private static double Zoom(Edge a, double onA, Edge b, double onB)
    {
        double reach = 1.0 / Coarse;
        double best = double.PositiveInfinity;
        for (int zoom = 0; zoom < Zooms; zoom++)
        {
            (double middleA, double middleB) = (onA, onB);
            for (int i = -Fine; i <= Fine; i++)
            {
                for (int j = -Fine; j <= Fine; j++)
                {
                    double tryA = Math.Clamp(middleA + (reach * i / Fine), 0, 1);
                    double tryB = Math.Clamp(middleB + (reach * j / Fine), 0, 1);
                    double distance = a.PointAt(tryA).DistanceTo(b.PointAt(tryB));
                    if (distance < best)
                    {
                        (best, onA, onB) = (distance, tryA, tryB);
                    }
                }
            }

            reach *= 0.3;
        }

        return best;
    }
}
