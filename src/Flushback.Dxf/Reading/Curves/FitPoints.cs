using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Curves;

/// <summary>The cubic spline through given points, with continuous curvature, over the length of the chords.</summary>
/// <remarks>
/// At an end with a given direction the curve leaves along it with unit speed over the chord length, as CAD programs do;
/// at an end without one its curvature is zero (a natural spline). A closed one runs round without a seam.
/// </remarks>
internal static class FitPoints
{
    /// <summary>
    /// So many points are laid on again past either end of a closed spline. A change at one point dies off by the factor
    /// 2 - sqrt(3) = 0.27 a point, so the seam is gone to 1e-13 of it.
    /// </summary>
    private const int Overlap = 24;

    /// <summary>The pieces of the spline.</summary>
    /// <param name="points">At least two points, no two in a row equal; for a closed spline the first is not repeated.</param>
    /// <param name="isClosed">True when the last point joins the first.</param>
    /// <param name="start">Direction at the first point; null for none.</param>
    /// <param name="end">Direction at the last point; null for none.</param>
    public static List<BezierPiece> Through(List<Point> points, bool isClosed, Vector? start, Vector? end)
    {
        if (!isClosed)
        {
            return Pieces(points, Slopes(points, start, end), 0, points.Count - 1);
        }

        List<Point> wrapped = [];
        for (int i = -Overlap; i <= points.Count + Overlap; i++)
        {
            wrapped.Add(points[((i % points.Count) + points.Count) % points.Count]);
        }

        return Pieces(wrapped, Slopes(wrapped, null, null), Overlap, Overlap + points.Count);
    }

    private static List<BezierPiece> Pieces(List<Point> points, Vector[] slopes, int first, int last)
    {
        List<BezierPiece> pieces = [];
        for (int i = first; i < last; i++)
        {
            // Hermite to Bezier: the inner control points lie a third of the way along the slopes.
            double third = points[i].DistanceTo(points[i + 1]) / 3;
            pieces.Add(
                new BezierPiece([
                    new ControlPoint(points[i]),
                    new ControlPoint(points[i] + (slopes[i] * third)),
                    new ControlPoint(points[i + 1] - (slopes[i + 1] * third)),
                    new ControlPoint(points[i + 1]),
                ])
            );
        }

        return pieces;
    }

    /// <summary>Slopes over the chord length for which the second derivative runs on: a tridiagonal system.</summary>
    private static Vector[] Slopes(List<Point> points, Vector? start, Vector? end)
    {
        int n = points.Count;
        double[] diagonal = new double[n];
        double[] above = new double[n];
        Vector[] right = new Vector[n];

        // Row 0: the given direction, or no curvature: 2 m0 + m1 = 3 (p1 - p0) / h.
        Vector chord = Secant(points, 0);
        (diagonal[0], above[0], right[0]) = start is { } s ? (1, 0, s.Normalized) : (2, 1, 3 * chord);
        for (int i = 1; i < n; i++)
        {
            double before = points[i - 1].DistanceTo(points[i]);
            bool isLast = i == n - 1;
            double after = isLast ? 0 : points[i].DistanceTo(points[i + 1]);
            double below;
            if (!isLast)
            {
                below = after;
                diagonal[i] = 2 * (before + after);
                above[i] = before;
                right[i] = 3 * ((after * Secant(points, i - 1)) + (before * Secant(points, i)));
            }
            else
            {
                (below, diagonal[i], right[i]) = end is { } e
                    ? (0, 1, e.Normalized)
                    : (1, 2, 3 * Secant(points, i - 1));
            }

            double factor = below / diagonal[i - 1];
            diagonal[i] -= factor * above[i - 1];
            right[i] -= factor * right[i - 1];
        }

        for (int i = n - 1; i >= 0; i--)
        {
            Vector rest = i < n - 1 ? right[i] - (above[i] * right[i + 1]) : right[i];
            right[i] = rest * (1 / diagonal[i]);
        }

        return right;
    }

    private static Vector Secant(List<Point> points, int i) =>
        (points[i + 1] - points[i]) * (1 / points[i].DistanceTo(points[i + 1]));
}
