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
    public Point Apply(Point p) => Apply(p, Vector.FromDirection(Turn));

    /// <summary>The turned (and mirrored) direction; shifts do not touch it.</summary>
    public Vector Apply(Vector v) => Apply(v, Vector.FromDirection(Turn));

    /// <summary>The moved edge; still travelled from its start to its end.</summary>
    public Edge Apply(Edge e) => Apply(e, Vector.FromDirection(Turn));

    /// <summary>Moves edges, each still travelled from its start to its end.</summary>
    /// <param name="edges">The edges.</param>
    /// <param name="moved">Where they go, in their order.</param>
    public void Apply(ReadOnlySpan<Edge> edges, Span<Edge> moved)
    {
        Vector turn = Vector.FromDirection(Turn);
        for (int i = 0; i < edges.Length; i++)
        {
            moved[i] = Apply(edges[i], turn);
        }
    }

    /// <summary>The moved circle.</summary>
    public Circle Apply(Circle c) => new(Apply(c.Centre), c.RadiusMm);

    /// <summary>The motion that does this one first and another after it.</summary>
    public RigidMotion Then(RigidMotion next)
    {
        // A mirror in the second motion turns the first one's angle the other way.
        Angle turn = next.Turn + (next.Mirrored ? -Turn : Turn);
        return new RigidMotion(turn, next.Apply(Shift) + next.Shift, Mirrored != next.Mirrored);
    }

    // With the unit vector of the turn found already.
    private Vector Apply(Vector v, Vector turn) => (Mirrored ? new Vector(v.X, -v.Y) : v).RotatedTo(turn);

    private Edge Apply(Edge e, Vector turn) =>
        new(Apply(e.Start, turn), Apply(e.End, turn), Mirrored ? -e.Bulge : e.Bulge);

    private Point Apply(Point p, Vector turn) => Point.Origin + Apply(p - Point.Origin, turn) + Shift;

    /// <summary>Mirror, turn and shift in their order. In the invariant culture, for logs and tests.</summary>
    public override string ToString() => $"{(Mirrored ? "mirror, " : "")}turn {Turn}, shift {Shift}";
}
