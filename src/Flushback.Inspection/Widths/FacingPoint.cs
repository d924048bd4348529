using Flushback.Geometry;

namespace Flushback.Inspection.Widths;

/// <summary>A point of the border as the end of a way across: how the distance changes as it moves along the border.</summary>
/// <param name="At">The point.</param>
/// <param name="Edge">The edge it lies on or, for a vertex, the one that begins there.</param>
/// <param name="Backward">Curvature of the border behind it, towards the area; minus infinity where the distance only grows that way.</param>
/// <param name="Forward">The same before it.</param>
internal readonly record struct FacingPoint(Point At, int Edge, double Backward, double Forward)
{
    /// <summary>
    /// How far from square, in radians, a way across may stand and still count as square: a micrometre in a millimetre, the
    /// rounding of coordinates that other programs write.
    /// </summary>
    public const double SquareRad = 1e-3;

    /// <summary>A point within an edge, when the direction across leads into the area there.</summary>
    public static FacingPoint? Within(Border border, int edge, Point at, Vector tangent, Vector across)
    {
        double curvature = border.CurvatureOf(edge);
        return tangent.Left.Dot(across) > 0.5 && Math.Abs(tangent.Dot(across)) <= SquareRad
            ? new FacingPoint(at, edge, curvature, curvature)
            : null;
    }

    /// <summary>The vertex an edge begins at, when the distance across does not shrink whichever way it moves.</summary>
    public static FacingPoint? AtStart(Border border, int edge, Vector across)
    {
        int before = border.Before(edge);
        Vector arriving = border.Edges[before].TangentAt(1);
        Vector leaving = border.Edges[edge].TangentAt(0);
        double behind = across.Dot(arriving);
        double ahead = -across.Dot(leaving);
        bool isInward = arriving.Left.Dot(across) > 0 || leaving.Left.Dot(across) > 0;
        if (behind < -SquareRad || ahead < -SquareRad || !isInward)
        {
            return null;
        }

        return new FacingPoint(
            border.Edges[edge].Start,
            edge,
            behind > SquareRad ? double.NegativeInfinity : border.CurvatureOf(before),
            ahead > SquareRad ? double.NegativeInfinity : border.CurvatureOf(edge)
        );
    }
}
