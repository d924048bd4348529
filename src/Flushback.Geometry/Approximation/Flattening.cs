using System.Collections.Immutable;

namespace Flushback.Geometry.Approximation;

/// <summary>Lines and arcs as points joined by chords: for drawing and for polygon software, never for the mechanism.</summary>
/// <remarks>
/// The sagitta is the greatest distance between arc and chords, in millimetres. The number of chords grows with the root
/// of radius over sagitta: a 10 mm circle takes about 70 at a hundredth of a millimetre.
/// </remarks>
public static class Flattening
{
    /// <summary>The corners of an outline made of chords, in its order; the first is not repeated at the end.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The sagitta is not a positive number.</exception>
    public static ImmutableArray<Point> PointsOf(
        Outline outline,
        double sagittaMm,
        FlatteningBias bias = FlatteningBias.PointsOnCurve
    )
    {
        ImmutableArray<Point>.Builder points = ImmutableArray.CreateBuilder<Point>(outline.Edges.Length);
        foreach (Edge edge in outline.Edges)
        {
            points.Add(edge.Start);
            AddInnerPoints(edge, sagittaMm, bias, points);
        }

        return points.DrainToImmutable();
    }

    /// <summary>The points of one edge, both ends among them.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The sagitta is not a positive number.</exception>
    public static ImmutableArray<Point> PointsOf(
        in Edge edge,
        double sagittaMm,
        FlatteningBias bias = FlatteningBias.PointsOnCurve
    )
    {
        ImmutableArray<Point>.Builder points = ImmutableArray.CreateBuilder<Point>();
        points.Add(edge.Start);
        AddInnerPoints(edge, sagittaMm, bias, points);
        points.Add(edge.End);
        return points.DrainToImmutable();
    }

    internal static void RequirePositive(double sagittaMm)
    {
        if (!(sagittaMm > 0))
        {
            throw new ArgumentOutOfRangeException(
                nameof(sagittaMm),
                sagittaMm,
                "The sagitta must be a positive number."
            );
        }
    }

    private static void AddInnerPoints(
        in Edge edge,
        double sagittaMm,
        FlatteningBias bias,
        ImmutableArray<Point>.Builder points
    )
    {
        RequirePositive(sagittaMm);
        if (edge.SagittaMm <= sagittaMm)
        {
            // The chord itself is near enough, on one side of the arc as it is.
            return;
        }

        int steps = StepsOf(edge, sagittaMm, bias);
        if (bias == FlatteningBias.PointsOnCurve)
        {
            for (int i = 1; i < steps; i++)
            {
                points.Add(edge.PointAt((double)i / steps));
            }

            return;
        }

        // One point in the middle of each step, so far out that arc and chords part as far outwards as inwards:
        // rho - r = r - rho cos(step / 2).
        double halfStep = Math.Abs(edge.Sweep.Radians) / steps / 2;
        double outwardMm = edge.RadiusMm * ((2 / (1 + Math.Cos(halfStep))) - 1);
        double sign = edge.Bulge > 0 ? 1 : -1;
        for (int i = 0; i < steps; i++)
        {
            double fraction = (i + 0.5) / steps;
            points.Add(edge.PointAt(fraction) + (edge.OutwardNormalAt(fraction) * (sign * outwardMm)));
        }
    }

    private static int StepsOf(in Edge arc, double sagittaMm, FlatteningBias bias)
    {
        // s = r (1 - cos(step/2)), written by the sine of a quarter step so that small sagittas keep their digits; with
        // the error shared, s = rho - r = r - rho cos(step/2).
        double radius = arc.RadiusMm;
        double sineSquared =
            bias == FlatteningBias.Centred ? sagittaMm / (radius + sagittaMm) : sagittaMm / (2 * radius);
        double longestStep = 4 * Math.Asin(Math.Sqrt(Math.Min(sineSquared, 0.5)));

        // No step beyond a quarter turn: a circle stays at least a square.
        return (int)Math.Ceiling(Math.Abs(arc.Sweep.Radians) / Math.Min(longestStep, Math.PI / 2));
    }
}
