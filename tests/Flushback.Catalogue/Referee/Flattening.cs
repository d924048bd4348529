using Flushback.Geometry;
using NetTopologySuite.Geometries;

namespace Flushback.Catalogue.Referee;

/// <summary>Turns an outline into a ring of chords, finely near a place and coarsely elsewhere.</summary>
/// <remarks>
/// Inner points of an arc are moved outward by half a sagitta, so that the chords leave the true arc by half a sagitta
/// on either side instead of a whole one on the inside: the error is centred. Ends of arcs stay where they are.
/// </remarks>
/// <param name="FineSagittaMm">Height of a chord's arc where it matters.</param>
/// <param name="CoarseSagittaMm">The same where it does not.</param>
internal readonly record struct Flattening(double FineSagittaMm, double CoarseSagittaMm)
{
    /// <summary>The closed ring, its last coordinate equal to its first.</summary>
    /// <param name="outline">What to flatten.</param>
    /// <param name="isFine">Says of a place whether arcs that pass there are flattened finely.</param>
    public Coordinate[] Ring(Outline outline, Func<Flushback.Geometry.Point, bool> isFine)
    {
        List<Coordinate> ring = [];
        foreach (Edge edge in outline.Edges)
        {
            ring.Add(new Coordinate(edge.Start.X, edge.Start.Y));
            if (edge.IsArc)
            {
                AddArc(ring, edge, PassesFine(edge, isFine) ? FineSagittaMm : CoarseSagittaMm);
            }
        }

        ring.Add(ring[0].Copy());
        return [.. ring];
    }

    private static bool PassesFine(Edge edge, Func<Flushback.Geometry.Point, bool> isFine) =>
        Enumerable.Range(0, 33).Any(i => isFine(edge.PointAt(i / 32.0)));

    private static void AddArc(List<Coordinate> ring, Edge edge, double sagittaMm)
    {
        double radius = edge.RadiusMm;
        double sweep = edge.Sweep.Radians;
        double largestStep = 2 * Math.Acos(Math.Max(0, 1 - (sagittaMm / radius)));
        int chords = Math.Max(2, (int)Math.Ceiling(Math.Abs(sweep) / largestStep));
        double halfSagitta = radius * (1 - Math.Cos(sweep / chords / 2)) / 2;
        Flushback.Geometry.Point centre = edge.Centre;
        double start = (edge.Start - centre).Direction.Radians;
        for (int i = 1; i < chords; i++)
        {
            (double sin, double cos) = Math.SinCos(start + (sweep * i / chords));
            ring.Add(
                new Coordinate(centre.X + ((radius + halfSagitta) * cos), centre.Y + ((radius + halfSagitta) * sin))
            );
        }
    }
}
