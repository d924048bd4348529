using System.Collections.Immutable;
using Flushback.Dxf.Reading.Curves;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>What one entity draws, in the units of the file, before it is placed.</summary>
internal abstract record PlaneCurve
{
    /// <summary>Points whose hull holds the whole curve, or nearly so: what tells how far out it reaches.</summary>
    public abstract IEnumerable<Point> Frame { get; }
}

/// <summary>Lines and arcs end to end; may hold edges of no length, as the file does.</summary>
internal sealed record EdgePath(ImmutableArray<Edge> Edges, bool IsClosed) : PlaneCurve
{
    /// <inheritdoc/>
    public override IEnumerable<Point> Frame => Edges.SelectMany(edge => new[] { edge.Start, edge.End });
}

/// <summary>A full circle.</summary>
internal sealed record CirclePath(Circle Circle) : PlaneCurve
{
    /// <inheritdoc/>
    public override IEnumerable<Point> Frame =>
        [
            Circle.Centre + new Vector(Circle.RadiusMm, Circle.RadiusMm),
            Circle.Centre - new Vector(Circle.RadiusMm, Circle.RadiusMm),
        ];
}

/// <summary>An ellipse or part of one: centre + U cos a + V sin a.</summary>
/// <param name="Centre">The centre.</param>
/// <param name="U">The half diameter at parameter zero.</param>
/// <param name="V">The half diameter at a quarter turn of the parameter.</param>
/// <param name="From">Where it begins, in radians of the parameter.</param>
/// <param name="Sweep">How far it runs, in radians of the parameter; a full turn for a whole ellipse.</param>
internal sealed record EllipsePath(Point Centre, Vector U, Vector V, double From, double Sweep) : PlaneCurve
{
    /// <inheritdoc/>
    public override IEnumerable<Point> Frame => [Centre + U + V, Centre + U - V, Centre - U + V, Centre - U - V];

    /// <summary>True for a whole ellipse.</summary>
    public bool IsWhole => Math.Abs(Sweep) >= Math.Tau;
}

/// <summary>A spline, cut into Bezier curves end to end.</summary>
internal sealed record BezierPath(ImmutableArray<BezierPiece> Pieces) : PlaneCurve
{
    /// <inheritdoc/>
    public override IEnumerable<Point> Frame =>
        Pieces.SelectMany(piece => piece.Controls).Select(control => control.Position);

    /// <summary>Where the spline begins.</summary>
    public Point Start => Pieces[0].At(0);

    /// <summary>Where the spline ends.</summary>
    public Point End => Pieces[^1].At(1);
}

/// <summary>A curve and the map from its own plane into the drawing's.</summary>
internal readonly record struct PlacedCurve(PlaneCurve Curve, PlaneMap Map);
