using System.Globalization;

namespace Flushback.Geometry;

/// <summary>A directed line or circular arc from one point to another.</summary>
/// <remarks>
/// On a counter-clockwise outline the material lies to the left of the direction of travel, and
/// <see cref="OutwardNormalAt"/> points to the right, out of it. An arc is convex there when its bulge is positive.
/// </remarks>
/// <param name="Start">Where the edge begins.</param>
/// <param name="End">Where the edge ends.</param>
/// <param name="Bulge">Tangent of a quarter of the included angle; zero for a line. See <see cref="Vertex.Bulge"/>.</param>
public readonly partial record struct Edge(Point Start, Point End, double Bulge = 0)
{
    /// <summary>A bulge no larger than this is a line.</summary>
    /// <remarks>
    /// Here the arc departs from its chord by 5e-9 of the chord's length, and rounding of its far-off centre costs as
    /// much again (the square root of half the machine precision): calling it a line loses nothing.
    /// </remarks>
    public const double FlattestBulge = 1e-8;

    /// <summary>True for a circular arc, false for a straight line.</summary>
    public bool IsArc => Math.Abs(Bulge) > FlattestBulge;

    /// <summary>Straight vector from start to end.</summary>
    public Vector Chord => End - Start;

    /// <summary>Included angle, positive counter-clockwise, in (-2 pi, 2 pi); zero for a line.</summary>
    public Angle Sweep => IsArc ? new Angle(4 * Math.Atan(Bulge)) : Angle.Zero;

    /// <summary>Radius in millimetres; infinite for a line.</summary>
    public double RadiusMm =>
        IsArc ? Chord.Length * (1 + (Bulge * Bulge)) / (4 * Math.Abs(Bulge)) : double.PositiveInfinity;

    /// <summary>Centre of the arc; not defined for a line.</summary>
    public Point Centre
    {
        get
        {
            // The centre lies left of the chord by chord (1 - b^2) / (4 b).
            double factor = (1 - (Bulge * Bulge)) / (4 * Bulge);
            return Start.MidpointTo(End) + (Chord.Left * factor);
        }
    }

    /// <summary>True for an arc so flat that what is computed by way of its centre is no longer good to a hundredth of a nanometre.</summary>
    internal bool HasFarCentre => IsArc && RadiusMm > 1e5;

    /// <summary>Greatest distance of the arc from its chord, in millimetres; zero for a line.</summary>
    public double SagittaMm => IsArc ? Chord.Length * Math.Abs(Bulge) / 2 : 0;

    /// <summary>Length along the edge, in millimetres.</summary>
    public double LengthMm => IsArc ? RadiusMm * Math.Abs(Sweep.Radians) : Chord.Length;

    /// <summary>Area between the chord and the arc in square millimetres, positive when the arc runs counter-clockwise.</summary>
    /// <remarks>Circular segment, r^2 (sweep - sin sweep) / 2 (elementary geometry).</remarks>
    public double SegmentAreaMm2
    {
        get
        {
            if (!IsArc)
            {
                return 0;
            }

            double sweep = Sweep.Radians;
            double square = sweep * sweep;

            // Below 0.2 the difference cancels; the power series of the sine is exact to rounding there.
            double difference =
                square < 0.04
                    ? sweep
                        * square
                        / 6
                        * (1 - (square / 20 * (1 - (square / 42 * (1 - (square / 72 * (1 - (square / 110))))))))
                    : sweep - Math.Sin(sweep);
            return RadiusMm * RadiusMm * difference / 2;
        }
    }

    /// <summary>The same edge travelled the other way.</summary>
    public Edge Reversed => new(End, Start, -Bulge);

    /// <summary>The edge between two points on a circle, travelled through the given signed angle.</summary>
    public static Edge Arc(Point start, Point end, Angle sweep) => new(start, end, Math.Tan(sweep.Radians / 4));

    /// <summary>The point at a fraction (0 start, 1 end) of the length.</summary>
    public Point PointAt(double fraction)
    {
        if (!IsArc)
        {
            // From the nearer end, so that both ends are met.
            return fraction <= 0.5 ? Start + (Chord * fraction) : End - (Chord * (1 - fraction));
        }

        // The chord to that point, from the whole chord: it needs no centre, so nearly straight arcs keep their digits,
        // and both ends are met.
        Angle sweep = Sweep;
        double sineOfHalf = 2 * Bulge / (1 + (Bulge * Bulge));
        double share = Math.Sin(sweep.Radians * fraction / 2) / sineOfHalf;
        return Start + (Chord.Rotated(sweep * ((fraction - 1) / 2)) * share);
    }

    /// <summary>The piece between two fractions of the length, travelled from the first to the second.</summary>
    public Edge Part(double from, double to)
    {
        double bulge = IsArc ? Math.Tan((Sweep * ((to - from) / 4)).Radians) : 0;
        return new Edge(PointAt(from), PointAt(to), bulge);
    }

    /// <summary>Unit direction of travel at a fraction of the length.</summary>
    public Vector TangentAt(double fraction)
    {
        // The tangent at the start is the chord turned back by half the sweep.
        Vector chord = Chord.Normalized;
        return IsArc ? chord.Rotated(Sweep * (fraction - 0.5)) : chord;
    }

    /// <summary>Unit normal at a fraction of the length, to the right of travel: out of a counter-clockwise outline.</summary>
    public Vector OutwardNormalAt(double fraction) => TangentAt(fraction).Right;

    /// <summary>Smallest box that holds the edge.</summary>
    public Box Bounds
    {
        get
        {
            Box box = Box.Empty.Including(Start).Including(End);
            if (!IsArc)
            {
                return box;
            }

            ReadOnlySpan<Vector> extremes = [new(1, 0), new(0, 1), new(-1, 0), new(0, -1)];
            foreach (Vector direction in extremes)
            {
                if (SpansDirection(direction))
                {
                    // By its fraction, which errs along the arc only, and there the box does not change.
                    box = box.Including(PointAt(FractionAtDirection(direction)));
                }
            }

            return box;
        }
    }

    /// <summary>Both ends, and the bulge of an arc. In the invariant culture, for logs and tests.</summary>
    public override string ToString() =>
        IsArc
            ? string.Create(CultureInfo.InvariantCulture, $"{Start} to {End}, bulge {Bulge}")
            : string.Create(CultureInfo.InvariantCulture, $"{Start} to {End}");
}
