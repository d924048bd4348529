using Flushback.Geometry;

namespace Flushback.Reports.Print;

/// <summary>A cubic Bézier curve by its four points.</summary>
internal readonly record struct Bezier(Point Start, Point FirstControl, Point SecondControl, Point End);

/// <summary>Arcs as cubic Bézier curves, the only curves that a page knows.</summary>
/// <remarks>
/// The handles are 4/3 tan(sweep / 4) radii long, so that ends, tangents and the middle of each curve lie on the circle.
/// In between it leaves the circle outward. With radius 1 the square of its distance from the centre is a polynomial in
/// s = 4 t (1 - t) that exceeds 1 by s^2 (1 - s) sin^6(sweep / 4) / cos^2(sweep / 4), most at s = 2/3, by 4/27 of that
/// fraction. Each arc is cut into equal curves that leave it by less than <see cref="LargestErrorMm"/>.
/// </remarks>
internal static class ArcBeziers
{
    /// <summary>Farthest a curve may leave its arc on paper: half a micrometre, the other half is left to rounding.</summary>
    public const double LargestErrorMm = 0.0005;

    // A quarter turn at most, so that a handle stays short of the corner of its tangents whatever the radius.
    private const double LargestSweep = Math.PI / 2;

    /// <summary>Curves along an arc, in its direction of travel.</summary>
    public static IEnumerable<Bezier> Along(Edge arc)
    {
        int count = CountFor(arc);
        Point start = arc.Start;
        for (int i = 0; i < count; i++)
        {
            Edge part = arc.Part((double)i / count, (double)(i + 1) / count);
            double handleMm = 4.0 / 3 * Math.Abs(part.Bulge) * part.RadiusMm;
            Point end = i == count - 1 ? arc.End : part.End;
            yield return new Bezier(
                start,
                start + (part.TangentAt(0) * handleMm),
                end - (part.TangentAt(1) * handleMm),
                end
            );
            start = end;
        }
    }

    /// <summary>How far a curve over a sweep leaves its arc, in millimetres.</summary>
    public static double ErrorMm(double radiusMm, double sweepRadians)
    {
        double sine = Math.Sin(sweepRadians / 4);
        double cosine = Math.Cos(sweepRadians / 4);
        double excess = 4.0 / 27 * Math.Pow(sine, 6) / (cosine * cosine);

        // The square root of 1 + excess, less 1, without cancelling.
        return radiusMm * excess / (1 + Math.Sqrt(1 + excess));
    }

    private static int CountFor(Edge arc)
    {
        double sweep = Math.Abs(arc.Sweep.Radians);
        int count = Math.Max(1, (int)Math.Ceiling(sweep / LargestSweep));
        while (ErrorMm(arc.RadiusMm, sweep / count) > LargestErrorMm)
        {
            count++;
        }

        return count;
    }
}
