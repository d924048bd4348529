using System.Text.Json;
using Flushback.Dxf.Drawings;
using Flushback.Geometry;
using Flushback.Geometry.Distances;

namespace Flushback.Dxf.Tests;

/// <summary>Compares lines and arcs with points on the true curves, both ways.</summary>
internal static class TrueCurves
{
    /// <summary>Lists of points as the referee prints them.</summary>
    public static Point[][] PointsOf(JsonElement curves) =>
        [
            .. curves
                .EnumerateArray()
                .Select(points =>
                    points.EnumerateArray().Select(xy => new Point(xy[0].GetDouble(), xy[1].GetDouble())).ToArray()
                ),
        ];

    /// <summary>How far a point of the true curves lies from the nearest edge, at most.</summary>
    public static double FarthestFromEdges(IEnumerable<Point[]> curves, Edge[] edges) =>
        curves.SelectMany(points => points).Max(p => edges.Min(edge => Distance.Between(p, edge).DistanceMm));

    /// <summary>How far a point of the edges lies from the chords of the true curves, at most.</summary>
    public static double FarthestFromCurves(IEnumerable<Edge> edges, Point[][] curves) =>
        edges.SelectMany(Samples).Max(p => curves.Min(points => DistanceToChords(p, points)));

    /// <summary>A shape's edges; a circle as two half circles.</summary>
    public static IEnumerable<Edge> EdgesOf(DxfShape shape) =>
        shape.Geometry switch
        {
            OpenChain chain => chain.Edges,
            ClosedOutline closed => closed.Outline.Edges,
            FullCircle { Circle: var c } =>
            [
                new Edge(c.Centre + new Vector(c.RadiusMm, 0), c.Centre - new Vector(c.RadiusMm, 0), 1),
                new Edge(c.Centre - new Vector(c.RadiusMm, 0), c.Centre + new Vector(c.RadiusMm, 0), 1),
            ],
            _ => [],
        };

    private static IEnumerable<Point> Samples(Edge edge) => Enumerable.Range(0, 9).Select(i => edge.PointAt(i / 8.0));

    private static double DistanceToChords(Point p, Point[] points) =>
        Enumerable
            .Range(0, points.Length - 1)
            .Min(i => Distance.Between(p, new Edge(points[i], points[i + 1])).DistanceMm);
}
