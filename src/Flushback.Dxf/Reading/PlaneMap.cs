using Flushback.Geometry;

namespace Flushback.Dxf.Reading;

/// <summary>An affine map of the plane: x' = a x + b y + tx, y' = c x + d y + ty.</summary>
internal readonly record struct PlaneMap(double A, double B, double C, double D, double Tx, double Ty)
{
    /// <summary>How unequal two scales may be and still count as one, relative: rounding of a few products.</summary>
    private const double SimilarityTolerance = 1e-12;

    /// <summary>The map that moves nothing.</summary>
    public static PlaneMap Identity => new(1, 0, 0, 1, 0, 0);

    /// <summary>The map from an entity's own coordinates to the drawing's when its plane is seen from behind.</summary>
    /// <remarks>By the format's arbitrary axis rule for a normal of (0, 0, -1): x runs the other way, y stays.</remarks>
    public static PlaneMap FromBehind => new(-1, 0, 0, 1, 0, 0);

    /// <summary>True when the map turns left into right.</summary>
    public bool IsMirror => (A * D) - (B * C) < 0;

    /// <summary>True when circles stay circles.</summary>
    public bool IsSimilarity
    {
        get
        {
            double first = (A * A) + (C * C);
            double second = (B * B) + (D * D);
            double skew = (A * B) + (C * D);
            double allowed = SimilarityTolerance * Math.Max(first, second);
            return Math.Abs(first - second) <= allowed && Math.Abs(skew) <= allowed;
        }
    }

    /// <summary>The factor of lengths along x; of all lengths when the map is a similarity.</summary>
    public double Scale => Math.Sqrt((A * A) + (C * C));

    /// <summary>The same factor for both axes.</summary>
    public static PlaneMap Scaled(double factor) => new(factor, 0, 0, factor, 0, 0);

    /// <summary>The mapped place.</summary>
    public Point Apply(Point p) => new((A * p.X) + (B * p.Y) + Tx, (C * p.X) + (D * p.Y) + Ty);

    /// <summary>The mapped displacement.</summary>
    public Vector Apply(Vector v) => new((A * v.X) + (B * v.Y), (C * v.X) + (D * v.Y));

    /// <summary>The map that does this one first and another after it.</summary>
    public PlaneMap Then(PlaneMap next) =>
        new(
            (next.A * A) + (next.B * C),
            (next.A * B) + (next.B * D),
            (next.C * A) + (next.D * C),
            (next.C * B) + (next.D * D),
            (next.A * Tx) + (next.B * Ty) + next.Tx,
            (next.C * Tx) + (next.D * Ty) + next.Ty
        );
}
