using Flushback.Geometry;

namespace Flushback.Dxf.Refitting;

/// <summary>Finds the circle that a whole outline of short edges stands for.</summary>
internal static class WholeCircle
{
    private const int Steps = 4;

    /// <summary>The circle and the farthest that the outline lies from it, in millimetres; null when it is none.</summary>
    /// <remarks>
    /// From the mean of the vertices, Gauss-Newton steps to the least sum of squared distances from the circle; vertices
    /// all around keep the equations well apart.
    /// </remarks>
    public static (Circle Circle, double DeviationMm)? Of(Outline outline, RefitTolerances tolerances)
    {
        if (outline.Edges.Length < tolerances.FewestEdges)
        {
            return null;
        }

        double x = outline.Edges.Average(edge => edge.Start.X);
        double y = outline.Edges.Average(edge => edge.Start.Y);
        Point centre = new(x, y);
        Circle circle = new(centre, outline.Edges.Average(edge => edge.Start.DistanceTo(centre)));
        for (int step = 0; step < Steps; step++)
        {
            circle = Improved(circle, outline);
        }

        double sweep = outline.IsCounterClockwise ? Math.Tau : -Math.Tau;
        return
            circle.Centre.IsFinite
            && RunFit.DeviationMm(outline.Edges.AsSpan(), circle, sweep, tolerances) is { } deviation
            ? (circle, deviation)
            : null;
    }

    private static Circle Improved(Circle circle, Outline outline)
    {
        // Unknowns are the shift of the centre and the change of the radius: off = |Q - C| - r falls by u.shift + change.
        double xx = 0;
        double xy = 0;
        double yy = 0;
        double sumX = 0;
        double sumY = 0;
        double offX = 0;
        double offY = 0;
        double off = 0;
        int count = outline.Edges.Length;
        foreach (Edge edge in outline.Edges)
        {
            Vector from = edge.Start - circle.Centre;
            Vector u = from.Normalized;
            double here = from.Length - circle.RadiusMm;
            xx += u.X * u.X;
            xy += u.X * u.Y;
            yy += u.Y * u.Y;
            sumX += u.X;
            sumY += u.Y;
            offX += here * u.X;
            offY += here * u.Y;
            off += here;
        }

        // The radius eliminated (change = (off - sum.shift) / count), two equations are left for the shift.
        double a = xx - (sumX * sumX / count);
        double b = xy - (sumX * sumY / count);
        double d = yy - (sumY * sumY / count);
        double right = offX - (sumX * off / count);
        double below = offY - (sumY * off / count);
        double determinant = (a * d) - (b * b);
        Vector shift = new(((d * right) - (b * below)) / determinant, ((a * below) - (b * right)) / determinant);
        double change = (off - (sumX * shift.X) - (sumY * shift.Y)) / count;
        return new Circle(circle.Centre + shift, circle.RadiusMm + change);
    }
}
