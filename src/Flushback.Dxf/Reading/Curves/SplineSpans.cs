using System.Collections.Immutable;

namespace Flushback.Dxf.Reading.Curves;

/// <summary>Cuts a B-spline at its knots into Bezier curves, which is exact.</summary>
/// <remarks>
/// By blossoming: control point j of the span from a to b is the spline's polar form at (degree - j) times a and j times
/// b, which de Boor's scheme evaluates (L. Ramshaw, "Blossoming: a connect-the-dots approach to splines", from memory).
/// </remarks>
internal static class SplineSpans
{
    /// <summary>The spans of a spline, leaving out those of no extent in the knots.</summary>
    /// <param name="degree">Degree, at least 1.</param>
    /// <param name="knots">Knots in rising order, as many as control points plus degree plus one.</param>
    /// <param name="controls">Control points.</param>
    public static IEnumerable<BezierPiece> Of(int degree, double[] knots, ControlPoint[] controls)
    {
        for (int span = degree; span < controls.Length; span++)
        {
            if (knots[span + 1] > knots[span])
            {
                yield return SpanAt(span, degree, knots, controls);
            }
        }
    }

    private static BezierPiece SpanAt(int span, int degree, double[] knots, ControlPoint[] controls)
    {
        ImmutableArray<ControlPoint>.Builder bezier = ImmutableArray.CreateBuilder<ControlPoint>(degree + 1);
        for (int j = 0; j <= degree; j++)
        {
            Homogeneous point = PolarForm(span, degree, knots, controls, atEnd: j);
            bezier.Add(new ControlPoint(point.Point, point.W));
        }

        return new BezierPiece(bezier.MoveToImmutable());
    }

    private static Homogeneous PolarForm(int span, int degree, double[] knots, ControlPoint[] controls, int atEnd)
    {
        Span<Homogeneous> points = stackalloc Homogeneous[degree + 1];
        for (int j = 0; j <= degree; j++)
        {
            points[j] = Homogeneous.Of(controls[j + span - degree]);
        }

        for (int round = 1; round <= degree; round++)
        {
            double argument = round <= atEnd ? knots[span + 1] : knots[span];
            for (int j = degree; j >= round; j--)
            {
                double from = knots[j + span - degree];
                double to = knots[j + 1 + span - round];
                points[j] = Homogeneous.Between(points[j - 1], points[j], (argument - from) / (to - from));
            }
        }

        return points[degree];
    }
}
