using Flushback.Geometry;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>A straight cut through the points at which its depths count.</summary>
internal readonly record struct CutLine
{
    // An edge within this of the cut was made by it.
    private const double OnCutMm = 1e-6;

    private readonly Point _front;
    private readonly Vector _along;

    /// <summary>Through two points; the metal that goes lies on the side of a direction.</summary>
    public CutLine(Point front, Point rear, Vector outward)
    {
        (_front, _along) = (front, rear - front);
        Vector square = _along.Right.Normalized;
        Square = square.Dot(outward) < 0 ? -square : square;
    }

    /// <summary>Unit direction square to the cut, out of the metal.</summary>
    public Vector Square { get; }

    /// <summary>Where a point lies along the cut: 0 at the front place, 1 at the rear one, beyond them less or more.</summary>
    public double ShareAt(Point at) => (at - _front).Dot(_along) / _along.LengthSquared;

    /// <summary>Height of a point above the cut.</summary>
    public double AboveMm(Point at) => (at - _front).Dot(Square);

    /// <summary>Depth of the cut under a place, along a normal there.</summary>
    public double DepthMm(Point at, Vector normal) => AboveMm(at) / normal.Dot(Square);

    /// <summary>True for a straight edge that lies on the cut.</summary>
    public bool Holds(in Edge edge) =>
        !edge.IsArc && Math.Abs(AboveMm(edge.Start)) < OnCutMm && Math.Abs(AboveMm(edge.End)) < OnCutMm;

    /// <summary>True for a hollow between two points of the cut.</summary>
    public bool HoldsEndsOf(in Edge edge) =>
        edge.Bulge < 0 && Math.Abs(AboveMm(edge.Start)) < OnCutMm && Math.Abs(AboveMm(edge.End)) < OnCutMm;

    /// <summary>The part of a stretch that lies under the cut; nothing where it is all above.</summary>
    public (Point Start, Point End) Under(Point start, Point end)
    {
        (double a, double b) = (AboveMm(start), AboveMm(end));
        return (a > 0, b > 0) switch
        {
            (true, true) => (start, start),
            (true, false) => (start + ((end - start) * (a / (a - b))), end),
            (false, true) => (start, start + ((end - start) * (a / (a - b)))),
            _ => (start, end),
        };
    }
}
