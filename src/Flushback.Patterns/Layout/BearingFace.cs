using Flushback.Geometry;

namespace Flushback.Patterns.Layout;

/// <summary>An endless straight face of the blade: the points whose product with the outward normal is the offset.</summary>
/// <param name="Normal">Unit normal out of the metal, knife frame, blade open.</param>
/// <param name="OffsetMm">Distance from the pivot along the normal.</param>
internal readonly record struct BearingFace(Vector Normal, double OffsetMm)
{
    /// <summary>The face through a point.</summary>
    public static BearingFace Through(Point on, Vector normal) => new(normal, normal.Dot(on - Point.Origin));

    /// <summary>The level face at a height, metal below.</summary>
    public static BearingFace Level(double heightMm) => new(new Vector(0, 1), heightMm);

    /// <summary>The face moved into the metal.</summary>
    public BearingFace In(double byMm) => this with { OffsetMm = OffsetMm - byMm };

    /// <summary>Where two faces cross (Cramer's rule).</summary>
    public Point Meets(BearingFace other)
    {
        double determinant = Normal.Cross(other.Normal);
        return new Point(
            ((OffsetMm * other.Normal.Y) - (other.OffsetMm * Normal.Y)) / determinant,
            ((Normal.X * other.OffsetMm) - (other.Normal.X * OffsetMm)) / determinant
        );
    }

    /// <summary>The point of the face at a given x.</summary>
    public Point AtX(double x) => new(x, (OffsetMm - (Normal.X * x)) / Normal.Y);

    /// <summary>Centre of the round of a radius that touches two faces from inside.</summary>
    public Point RoundCentre(BearingFace other, double radiusMm) => In(radiusMm).Meets(other.In(radiusMm));

    /// <summary>
    /// Centre of the round that touches this face and the circle of a radius about the pivot from inside, on the rear side.
    /// NaN where the face does not come within the circle.
    /// </summary>
    public Point RearRoundCentre(double runRadiusMm, double radiusMm)
    {
        double along = Math.Sqrt(
            ((runRadiusMm - radiusMm) * (runRadiusMm - radiusMm)) - ((OffsetMm - radiusMm) * (OffsetMm - radiusMm))
        );
        Vector foot = Normal * (OffsetMm - radiusMm);
        Vector rearward = Normal.Left.X < 0 ? Normal.Left : Normal.Right;
        return Point.Origin + foot + (rearward * along);
    }
}
