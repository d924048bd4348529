using Flushback.Geometry;

namespace Flushback.Dxf.Refitting;

/// <summary>The arc between the ends of a run that lies nearest to the vertices between them.</summary>
internal static class PinnedArc
{
    private const int MostSteps = 8;
    private const double SmallestStep = 1e-12;

    /// <summary>The arc of least squares; null when the run does not bend one way.</summary>
    /// <param name="run">At least two edges.</param>
    /// <remarks>
    /// A point on the arc sees both ends under one angle (inscribed angle theorem), which gives the bulge from the middle
    /// vertex. With c the chord, n its left normal, C the centre, r the radius and u the direction from C to a vertex, the
    /// vertex lies d = |Q - C| - r off the arc, and dd/db = c ((1 + b^2) u.n + 1 - b^2) / (4 b^2) (derivatives of
    /// C = M + n c (1 - b^2) / (4 b) and r = c (1 + b^2) / (4 b)); Gauss-Newton steps take b to the least sum of squares.
    /// </remarks>
    public static Edge? Of(ReadOnlySpan<Edge> run)
    {
        Point start = run[0].Start;
        Point end = run[^1].End;
        Point middle = run[run.Length / 2].Start;
        Vector into = middle - start;
        Vector outOf = end - middle;
        double half = Math.Atan2(into.Cross(outOf), into.Dot(outOf));
        if (half == 0 || start == end)
        {
            return null;
        }

        // Mirrored where it bends to the right, so that the formulas below hold for one sign.
        double side = Math.Sign(half);
        double bulge = Math.Tan(Math.Abs(half) / 2);
        Vector chord = end - start;
        Vector left = chord.Left.Normalized * side;
        double length = chord.Length;
        for (int step = 0; step < MostSteps; step++)
        {
            double square = bulge * bulge;
            Point centre = start.MidpointTo(end) + (left * (length * (1 - square) / (4 * bulge)));
            double radius = length * (1 + square) / (4 * bulge);
            double upper = 0;
            double lower = 0;
            foreach (Edge edge in run[1..])
            {
                Vector from = edge.Start - centre;
                double distance = from.Length;
                double off = distance - radius;
                double slope = length * (((1 + square) * from.Dot(left) / distance) + 1 - square) / (4 * square);
                upper += off * slope;
                lower += slope * slope;
            }

            double change = upper / lower;
            bulge -= change;
            if (!(bulge > 0) || !double.IsFinite(bulge))
            {
                return null;
            }

            if (Math.Abs(change) <= SmallestStep * bulge)
            {
                break;
            }
        }

        return new Edge(start, end, side * bulge);
    }
}
