namespace Flushback.Geometry;

/// <summary>
/// A motion of the plane that keeps lengths: mirror first (y to -y) if asked, then turn counter-clockwise about the
/// origin, then shift.
/// </summary>
/// <param name="Turn">Counter-clockwise turn about the origin, after the mirror.</param>
/// <param name="Shift">Displacement after the turn, in millimetres.</param>
/// <param name="Mirrored">True when y changes sign first; bulges then change sign too.</param>
public readonly record struct RigidMotion(Angle Turn, Vector Shift, bool Mirrored = false)
{
    /// <summary>The motion that moves nothing.</summary>
    public static RigidMotion Identity => default;

    /// <summary>The motion that undoes this one.</summary>
    public RigidMotion Inverse
    {
        get
        {
            // p' = T(M p) + s, so p = M T^-1 (p' - s); written again as mirror, turn, shift.
            Angle turn = Mirrored ? Turn : -Turn;
            Vector back = (-Shift).Rotated(-Turn);
            return new RigidMotion(turn, Mirrored ? new Vector(back.X, -back.Y) : back, Mirrored);
        }
    }

    /// <summary>A turn about a point.</summary>
    public static RigidMotion RotationAbout(Point centre, Angle turn)
    {
        Vector fromOrigin = centre - Point.Origin;
        return new RigidMotion(turn, fromOrigin - fromOrigin.Rotated(turn));
    }

    /// <summary>The moved point.</summary>
    public Point Apply(Point p) => Point.Origin + Apply(p - Point.Origin) + Shift;

    /// <summary>The turned (and mirrored) direction; shifts do not touch it.</summary>
    public Vector Apply(Vector v) => (Mirrored ? new Vector(v.X, -v.Y) : v).Rotated(Turn);

    /// <summary>The moved edge; still travelled from its start to its end.</summary>
    public Edge Apply(Edge e) => new(Apply(e.Start), Apply(e.End), Mirrored ? -e.Bulge : e.Bulge);

    /// <summary>The moved circle.</summary>
    public Circle Apply(Circle c) => new(Apply(c.Centre), c.RadiusMm);

    /// <summary>The motion that does this one first and another after it.</summary>
    public RigidMotion Then(RigidMotion next)
    {
        // A mirror in the second motion turns the first one's angle the other way.
        Angle turn = next.Turn + (next.Mirrored ? -Turn : Turn);
        return new RigidMotion(turn, next.Apply(Shift) + next.Shift, Mirrored != next.Mirrored);
    }

    /// <summary>Mirror, turn and shift in their order. In the invariant culture, for logs and tests.</summary>
    public override string ToString() => $"{(Mirrored ? "mirror, " : "")}turn {Turn}, shift {Shift}";
}
