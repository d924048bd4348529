namespace Flushback.Geometry.Tests.Shapes;

/// <summary>A referee for distances that knows only points of edges: samples both, then zooms in on the nearest pairs.</summary>
internal static class SampledDistance
{
    private const int Coarse = 60;
    private const int Fine = 8;
    private const int Zooms = 14;

    /// <summary>An upper bound of the distance, close to it.</summary>
    public static double Between(Edge a, Edge b)
    {
        double best = double.PositiveInfinity;
        foreach ((double onA, double onB) in LocalMinima(a, b))
        {
            best = Math.Min(best, Zoom(a, onA, b, onB));
        }

        return best;
    }

    private static IEnumerable<(double OnA, double OnB)> LocalMinima(Edge a, Edge b)
    {
        double[,] distances = new double[Coarse + 1, Coarse + 1];
        for (int i = 0; i <= Coarse; i++)
        {
            for (int j = 0; j <= Coarse; j++)
            {
                distances[i, j] = a.PointAt((double)i / Coarse).DistanceTo(b.PointAt((double)j / Coarse));
            }
        }

        double least = distances.Cast<double>().Min();
        double slack = (a.LengthMm + b.LengthMm) / Coarse;
        for (int i = 0; i <= Coarse; i++)
        {
            for (int j = 0; j <= Coarse; j++)
            {
                if (distances[i, j] <= least + (slack / 4))
                {
                    yield return ((double)i / Coarse, (double)j / Coarse);
                }
            }
        }
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
