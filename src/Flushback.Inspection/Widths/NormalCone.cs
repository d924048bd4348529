using Flushback.Geometry;

namespace Flushback.Inspection.Widths;

/// <summary>The directions into an area from a stretch of its border.</summary>
/// <param name="Middle">The direction in the middle.</param>
/// <param name="HalfRad">How far the directions spread to either side of it; negative for none at all.</param>
internal readonly record struct NormalCone(Angle Middle, double HalfRad)
{
    /// <summary>No direction.</summary>
    public static NormalCone None => new(Angle.Zero, -1);

    /// <summary>The cone of an edge and the vertex it begins at.</summary>
    public static NormalCone Of(Border border, int edge)
    {
        Edge e = border.Edges[edge];
        NormalCone own = new(e.TangentAt(0.5).Left.Direction, Math.Abs(e.Sweep.Radians) / 2);
        double turn = border.TurnAtStart(edge).Radians;
        if (turn >= 0)
        {
            return own;
        }

        // An inner corner can be touched from every direction between the normals of its two edges.
        Angle atStart = e.TangentAt(0).Left.Direction;
        return own.With(new NormalCone(atStart - new Angle(turn / 2), -turn / 2));
    }

    /// <summary>A cone that holds both.</summary>
    public NormalCone With(NormalCone other)
    {
        if (HalfRad < 0 || other.HalfRad < 0)
        {
            return HalfRad < 0 ? other : this;
        }

        double apart = (other.Middle - Middle).Signed.Radians;
        double distance = Math.Abs(apart);
        if (distance + other.HalfRad <= HalfRad)
        {
            return this;
        }

        if (distance + HalfRad <= other.HalfRad)
        {
            return other;
        }

        double half = Math.Min(Math.PI, (distance + HalfRad + other.HalfRad) / 2);
        return new NormalCone(Middle + new Angle(Math.Sign(apart) * (half - HalfRad)), half);
    }

    /// <summary>Whether a direction of this cone is opposite to one of another, to within an angle.</summary>
    public bool Faces(NormalCone other, double withinRad) =>
        HalfRad >= 0
        && other.HalfRad >= 0
        && Math.Abs((Middle + new Angle(Math.PI) - other.Middle).Signed.Radians) <= HalfRad + other.HalfRad + withinRad;
}
