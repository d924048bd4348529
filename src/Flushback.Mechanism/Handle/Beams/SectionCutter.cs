using Flushback.Geometry;
using Flushback.Geometry.Crossings;

namespace Flushback.Mechanism.Handle.Beams;

/// <summary>Cuts a spring square to its centreline.</summary>
/// <remarks>
/// The centreline is the middle of the cuts square to the handle; its slope is the mean of the slopes of back and
/// underside there. The depth is then measured along the normal of the centreline. On a straight spring the two cuts
/// are one.
/// </remarks>
internal sealed class SectionCutter
{
    // Far over rounding, and nothing to a depth.
    private const double BesideMm = 1e-7;

    private readonly Outline _spring;
    private readonly Circle[] _holes;
    private readonly double _reachMm;
    private readonly double _addedDepthMm;

    public SectionCutter(Outline spring, double addedDepthMm, params Circle[] holes)
    {
        _addedDepthMm = addedDepthMm;
        _spring = spring;
        _holes = holes;
        _reachMm = spring.Bounds.HalfPerimeterMm;
    }

    /// <summary>The centreline's point and the section at a place along the handle, and how much longer the centreline is.</summary>
    /// <exception cref="ArgumentException">There is no spring at that place.</exception>
    public (Point Centre, BeamSection Section, double Stretch) At(double xMm)
    {
        (Side under, Side back) = Cut(new Point(xMm, 0), new Vector(0, 1), near: null);
        Point centre = under.At.MidpointTo(back.At);
        Vector along = new Vector(1, (under.Slope + back.Slope) / 2).Normalized;
        (under, back) = Cut(centre, along.Left, near: centre);
        double depth = under.At.DistanceTo(back.At) + _addedDepthMm;
        Point middle = under.At.MidpointTo(back.At) + (along.Left * (_addedDepthMm / 2));
        return (centre, WithHole(depth, middle, along), 1 / along.X);
    }

    private BeamSection WithHole(double depthMm, Point middle, Vector along)
    {
        foreach (Circle hole in _holes)
        {
            Vector toHole = hole.Centre - middle;
            double off = toHole.Dot(along);
            if (Math.Abs(off) < hole.RadiusMm)
            {
                double half = Math.Sqrt((hole.RadiusMm - off) * (hole.RadiusMm + off));
                return new BeamSection(depthMm, 2 * half, toHole.Dot(along.Left));
            }
        }

        return new BeamSection(depthMm);
    }

    /// <summary>Underside and back where a line passes the spring: of the stretch of metal about a point, or the longest.</summary>
    private (Side Under, Side Back) Cut(Point through, Vector up, Point? near)
    {
        List<(double Height, Side Side)> sides = Sides(through, up);
        if (MeetsCorner(sides))
        {
            // A corner belongs to two edges and would count twice: cut beside it.
            sides = Sides(through + (up.Right * BesideMm), up);
        }

        (Side, Side)? best = null;
        double longest = 0;
        for (int i = 0; i + 1 < sides.Count; i += 2)
        {
            double length = sides[i + 1].Height - sides[i].Height;
            bool holds = near is not null && sides[i].Height <= 0 && sides[i + 1].Height >= 0;
            if (holds || length > longest)
            {
                best = (sides[i].Side, sides[i + 1].Side);
                longest = holds ? double.PositiveInfinity : length;
            }
        }

        return best
            ?? throw new ArgumentException(
                FormattableString.Invariant($"There is no spring at x = {through.X} mm."),
                nameof(through)
            );
    }

    private static bool MeetsCorner(List<(double Height, Side Side)> sides)
    {
        for (int i = 1; i < sides.Count; i++)
        {
            if (sides[i].Height - sides[i - 1].Height < BesideMm)
            {
                return true;
            }
        }

        return sides.Count % 2 != 0;
    }

    private List<(double Height, Side Side)> Sides(Point through, Vector up)
    {
        double reach = _reachMm + Math.Abs(through.Y) + (_spring.Bounds.Centre - Point.Origin).Length;
        Edge cut = new(through - (up * reach), through + (up * reach));
        List<(double Height, Side Side)> sides = [];
        foreach (Edge edge in _spring.Edges)
        {
            Meetings meetings = Crossing.Between(cut, edge, 0);
            for (int i = 0; i < meetings.Count; i++)
            {
                Vector tangent = edge.TangentAt(meetings[i].OnSecond.Middle);
                Point at = meetings[i].At;
                sides.Add(((at - through).Dot(up), new Side(at, tangent.Y / tangent.X)));
            }
        }

        sides.Sort(static (a, b) => a.Height.CompareTo(b.Height));
        return sides;
    }

    /// <summary>Where a cut meets the outline, and the outline's slope there.</summary>
    private readonly record struct Side(Point At, double Slope);
}
