namespace Flushback.Geometry.Polar;

/// <summary>
/// A stretch of a line or arc along which the distance from a centre only grows or only shrinks, so that it has one
/// polar angle at each radius.
/// </summary>
/// <remarks>
/// Seen from the centre, in polar coordinates (radius, angle): the piece is the graph of <see cref="AngleAt"/> over
/// [<see cref="InnerMm"/>, <see cref="OuterMm"/>]. Angles are radians in (-pi, pi], already turned by whatever the
/// splitter was asked for. The law of cosines gives both forms: a line at signed distance h has the angle
/// n +- acos(h / rho), an arc of radius r about a point at distance D the angle c +- acos((D^2 + rho^2 - r^2) / (2 D rho)),
/// both computed by their half angles.
/// </remarks>
public readonly record struct RadialPiece
{
    internal RadialPiece(
        int index,
        int edgeIndex,
        bool isArc,
        double offset,
        double radius,
        double axis,
        double side,
        RadialEnd inner,
        RadialEnd outer,
        bool outward
    )
    {
        Index = index;
        EdgeIndex = edgeIndex;
        IsArc = isArc;
        OffsetMm = offset;
        SignedRadiusMm = radius;
        _axis = axis;
        _side = side;
        Inner = inner;
        Outer = outer;
        IsOutward = outward;
        (MinAngle, MaxAngle) = inner.Angle <= outer.Angle ? (inner.Angle, outer.Angle) : (outer.Angle, inner.Angle);
        double r = Math.Abs(radius);
        if (isArc && offset > r)
        {
            // Seen from outside its circle an arc bulges past its ends where the sight line is tangent to it.
            double tangent = Math.Sqrt((offset - r) * (offset + r));
            if (tangent > inner.RadiusMm && tangent < outer.RadiusMm)
            {
                double extreme = Wrapped(axis + (side * Math.Asin(r / offset)));
                MinAngle = Math.Min(MinAngle, extreme);
                MaxAngle = Math.Max(MaxAngle, extreme);
            }
        }
    }

    // Direction of the line's normal or of the arc's centre, and which side of it this piece lies on.
    private readonly double _axis;
    private readonly double _side;

    /// <summary>Index of this piece in the list it was put into.</summary>
    public int Index { get; }

    /// <summary>Index of the edge in its outline.</summary>
    public int EdgeIndex { get; }

    /// <summary>True on an arc, false on a line.</summary>
    public bool IsArc { get; }

    /// <summary>Line: signed distance of the line from the centre along its outward normal. Arc: distance of its own centre.</summary>
    public double OffsetMm { get; }

    /// <summary>Radius of an arc, positive where the outline is convex, negative in a hollow; 0 for a line.</summary>
    public double SignedRadiusMm { get; }

    /// <summary>The end nearer to the centre.</summary>
    public RadialEnd Inner { get; }

    /// <summary>The end farther from the centre.</summary>
    public RadialEnd Outer { get; }

    /// <summary>Smallest radius on the piece.</summary>
    public double InnerMm => Inner.RadiusMm;

    /// <summary>Largest radius on the piece.</summary>
    public double OuterMm => Outer.RadiusMm;

    /// <summary>Smallest polar angle on the piece, in radians.</summary>
    public double MinAngle { get; }

    /// <summary>Largest polar angle on the piece, in radians.</summary>
    public double MaxAngle { get; }

    /// <summary>
    /// True when a counter-clockwise outline travels this piece away from the centre: its material then lies at larger
    /// polar angles, and the piece is a lower boundary. False: an upper boundary.
    /// </summary>
    public bool IsOutward { get; }

    /// <summary>Polar angle at a radius within the piece, in radians in (-pi, pi]; the ends return their exact angle.</summary>
    public double AngleAt(double radiusMm)
    {
        if (radiusMm <= Inner.RadiusMm)
        {
            return Inner.Angle;
        }

        if (radiusMm >= Outer.RadiusMm)
        {
            return Outer.Angle;
        }

        // tan^2(a / 2) = (1 - cos a) / (1 + cos a), factored: it keeps its digits where the arc cosine loses half of them.
        double r = Math.Abs(SignedRadiusMm);
        double tangent2 = IsArc
            ? (r - OffsetMm + radiusMm)
                * (r + OffsetMm - radiusMm)
                / ((OffsetMm + radiusMm - r) * (OffsetMm + radiusMm + r))
            : (radiusMm - OffsetMm) / (radiusMm + OffsetMm);
        return Wrapped(_axis + (_side * 2 * Math.Atan(Math.Sqrt(Math.Max(0, tangent2)))));
    }

    /// <summary>Unit outward normal at the point of the piece with a radius and its polar angle.</summary>
    public Vector OutwardNormalAt(double radiusMm, double angle)
    {
        if (!IsArc)
        {
            return Vector.FromDirection(new Angle(_axis));
        }

        Vector fromCentre =
            (Vector.FromDirection(new Angle(angle)) * radiusMm) - (Vector.FromDirection(new Angle(_axis)) * OffsetMm);
        return fromCentre * (1 / SignedRadiusMm);
    }

    internal static double Wrapped(double angle) =>
        angle > Math.PI ? angle - Math.Tau
        : angle <= -Math.PI ? angle + Math.Tau
        : angle;
}

/// <summary>An end of a radial piece.</summary>
/// <param name="RadiusMm">Distance from the centre.</param>
/// <param name="Angle">Polar angle in radians in (-pi, pi].</param>
/// <param name="Vertex">Index of the outline's vertex there, or -1 where the edge merely turns back in radius.</param>
public readonly record struct RadialEnd(double RadiusMm, double Angle, int Vertex);
