using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Valid;

namespace Flushback.Geometry.Approximation;

/// <summary>Outlines as polygons of NetTopologySuite, flattened to a stated sagitta.</summary>
public static class Polygons
{
    private static readonly GeometryFactory Factory = new(new PrecisionModel());

    /// <summary>A polygon with a hole for each further outline. Not checked: see <see cref="FlawOf"/>.</summary>
    /// <param name="shell">The border, travelled either way.</param>
    /// <param name="holes">The holes, travelled either way.</param>
    /// <param name="sagittaMm">Greatest distance between an arc and its chords, in millimetres.</param>
    /// <param name="bias">On which side of the arcs the chords lie.</param>
    /// <exception cref="ArgumentOutOfRangeException">The sagitta is not a positive number.</exception>
    public static Polygon Of(
        Outline shell,
        ReadOnlySpan<Outline> holes,
        double sagittaMm,
        FlatteningBias bias = FlatteningBias.PointsOnCurve
    )
    {
        LinearRing[] rings = new LinearRing[holes.Length];
        for (int i = 0; i < holes.Length; i++)
        {
            rings[i] = RingOf(holes[i], sagittaMm, bias);
        }

        return Factory.CreatePolygon(RingOf(shell, sagittaMm, bias), rings);
    }

    /// <summary>What makes a polygon unfit for areas and overlaps, or null when it is sound.</summary>
    public static PolygonFlaw? FlawOf(Polygon polygon)
    {
        TopologyValidationError? error = new IsValidOp(polygon).ValidationError;
        return error is null
            ? null
            : new PolygonFlaw(KindOf(error.ErrorType), new Point(error.Coordinate.X, error.Coordinate.Y));
    }

    private static PolygonFlawKind KindOf(TopologyValidationErrors error) =>
        error switch
        {
            TopologyValidationErrors.SelfIntersection => PolygonFlawKind.SelfCrossing,
            TopologyValidationErrors.RingSelfIntersection => PolygonFlawKind.SelfTouching,
            TopologyValidationErrors.HoleOutsideShell => PolygonFlawKind.HoleOutside,
            TopologyValidationErrors.NestedHoles => PolygonFlawKind.HoleInHole,
            TopologyValidationErrors.DuplicateRings => PolygonFlawKind.DuplicateHole,
            TopologyValidationErrors.DisconnectedInteriors => PolygonFlawKind.CutApart,
            TopologyValidationErrors.TooFewPoints => PolygonFlawKind.TooFewPoints,
            TopologyValidationErrors.InvalidCoordinate => PolygonFlawKind.NotFinite,
            _ => PolygonFlawKind.Other,
        };

    private static LinearRing RingOf(Outline outline, double sagittaMm, FlatteningBias bias)
    {
        var points = Flattening.PointsOf(outline, sagittaMm, bias);
        Coordinate[] ring = new Coordinate[points.Length + 1];
        for (int i = 0; i < points.Length; i++)
        {
            ring[i] = new Coordinate(points[i].X, points[i].Y);
        }

        ring[^1] = ring[0].Copy();
        return Factory.CreateLinearRing(ring);
    }
}
