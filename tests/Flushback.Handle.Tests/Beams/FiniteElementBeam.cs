using Flushback.Geometry;

namespace Flushback.Handle.Tests.Beams;

/// <summary>
/// An independent referee: plain Euler-Bernoulli elements with cubic shapes (every text on finite elements), each of the
/// depth found at its middle by walking the flattened outline with a line square to the centreline, whose slope is a
/// difference of two middles, solved by elimination. Unit modulus and width.
/// </summary>
internal static class FiniteElementBeam
{
    private const int Elements = 3000;

    /// <summary>Rise and tilt at the loaded end for a unit force, and tilt for a unit moment.</summary>
    public static (double RisePerForce, double TiltPerForce, double TiltPerMoment) Solve(
        Outline spring,
        Circle centrePin,
        Circle rearPin,
        double endX
    )
    {
        List<Point> ring = Flatten(spring);
        double from = rearPin.Centre.X;
        int atPin = (int)Math.Round(Elements * (centrePin.Centre.X - from) / (endX - from));
        int unknowns = 2 * (Elements + 1);
        double[,] band = new double[unknowns, 4];
        for (int e = 0; e < Elements; e++)
        {
            double left = NodeX(e);
            double length = NodeX(e + 1) - left;
            double moment = SecondMoment(ring, left + (length / 2), centrePin, rearPin);
            Assemble(band, 2 * e, moment, length);
        }

        Hold(band, 0);
        Hold(band, 2 * atPin);
        double[] force = Answer(band, unknowns - 2);
        double[] turn = Answer(band, unknowns - 1);
        return (force[^2], force[^1], turn[^1]);

        double NodeX(int node) =>
            node <= atPin
                ? from + ((centrePin.Centre.X - from) * node / atPin)
                : centrePin.Centre.X + ((endX - centrePin.Centre.X) * (node - atPin) / (Elements - atPin));
    }

    private static void Assemble(double[,] band, int at, double moment, double length)
    {
        double k = moment / (length * length * length);
        double[,] element =
        {
            { 12, 6 * length, -12, 6 * length },
            { 6 * length, 4 * length * length, -6 * length, 2 * length * length },
            { -12, -6 * length, 12, -6 * length },
            { 6 * length, 2 * length * length, -6 * length, 4 * length * length },
        };
        for (int i = 0; i < 4; i++)
        {
            for (int j = i; j < 4; j++)
            {
                band[at + i, j - i] += k * element[i, j];
            }
        }
    }

    private static void Hold(double[,] band, int unknown)
    {
        for (int j = 1; j < 4; j++)
        {
            band[unknown, j] = 0;
            if (unknown - j >= 0)
            {
                band[unknown - j, j] = 0;
            }
        }

        band[unknown, 0] = 1;
    }

    /// <summary>Symmetric elimination within the band for one unit load.</summary>
    private static double[] Answer(double[,] stiffness, int loaded)
    {
        double[,] band = (double[,])stiffness.Clone();
        int n = band.GetLength(0);
        double[] x = new double[n];
        x[loaded] = 1;
        for (int i = 0; i < n; i++)
        {
            for (int j = 1; j < 4 && i + j < n; j++)
            {
                double factor = band[i, j] / band[i, 0];
                for (int k = j; k < 4; k++)
                {
                    band[i + j, k - j] -= factor * band[i, k];
                }

                x[i + j] -= factor * x[i];
            }
        }

        for (int i = n - 1; i >= 0; i--)
        {
            for (int j = 1; j < 4 && i + j < n; j++)
            {
                x[i] -= band[i, j] * x[i + j];
            }

            x[i] /= band[i, 0];
        }

        return x;
    }

    /// <summary>Second moment over the length of the centreline for one millimetre along x, the depth square to it.</summary>
    private static double SecondMoment(List<Point> ring, double x, params Circle[] holes)
    {
        const double aside = 1e-4;
        Point middle = MiddleAt(ring, x);
        Vector along = (MiddleAt(ring, x + aside) - MiddleAt(ring, x - aside)).Normalized;
        (double low, double high) = Ends(ring, middle, along.Left);
        List<(double Low, double High)> strips = [(low, high)];
        foreach (Circle hole in holes)
        {
            double off = (hole.Centre - middle).Dot(along);
            double height = (hole.Centre - middle).Dot(along.Left);
            if (Math.Abs(off) < hole.RadiusMm)
            {
                double half = Math.Sqrt((hole.RadiusMm * hole.RadiusMm) - (off * off));
                strips = [(low, height - half), (height + half, high)];
            }
        }

        double area = strips.Sum(s => s.High - s.Low);
        double centroid = strips.Sum(s => ((s.High * s.High) - (s.Low * s.Low)) / 2) / area;
        return along.X * strips.Sum(s => (Math.Pow(s.High - centroid, 3) - Math.Pow(s.Low - centroid, 3)) / 3);
    }

    private static Point MiddleAt(List<Point> ring, double x)
    {
        (double low, double high) = Ends(ring, new Point(x, 0), new Vector(0, 1));
        return new Point(x, (low + high) / 2);
    }

    /// <summary>Lowest and highest place at which a line passes the ring, as heights over a point of the line.</summary>
    private static (double Low, double High) Ends(List<Point> ring, Point through, Vector up)
    {
        (double low, double high) = (double.PositiveInfinity, double.NegativeInfinity);
        for (int i = 0; i < ring.Count; i++)
        {
            (Point a, Point b) = (ring[i], ring[(i + 1) % ring.Count]);
            double sideA = (a - through).Cross(up);
            double sideB = (b - through).Cross(up);
            if (sideA > 0 != sideB > 0)
            {
                double height = (a + ((b - a) * (sideA / (sideA - sideB))) - through).Dot(up);
                (low, high) = (Math.Min(low, height), Math.Max(high, height));
            }
        }

        return (low, high);
    }

    private static List<Point> Flatten(Outline spring)
    {
        List<Point> ring = [];
        foreach (Edge edge in spring.Edges)
        {
            int pieces = edge.IsArc ? 400 : 1;
            for (int i = 0; i < pieces; i++)
            {
                ring.Add(edge.PointAt(i / (double)pieces));
            }
        }

        return ring;
    }
}
