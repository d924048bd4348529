using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Mechanism.Knives;

/// <summary>Finds the faces of a spring from the direction of its outward normals, in the knife frame.</summary>
internal static class SpringFaceFinder
{
    // A front corner is a small convex edge; anything longer is a face.
    private const double LargestCornerMm = 2.5;

    /// <summary>The face of each edge of a counter-clockwise spring.</summary>
    public static ImmutableArray<SpringFace> Find(Outline spring, Point centrePin)
    {
        CarrierRuns runs = new(spring.Edges);
        ImmutableArray<Edge> edges = runs.Edges;
        Box bounds = spring.Bounds;
        double front = bounds.MaxX;
        SpringFace[] faces = new SpringFace[edges.Length];
        for (int i = 0; i < edges.Length; i++)
        {
            Vector normal = edges[i].OutwardNormalAt(0.5);
            Point middle = edges[i].PointAt(0.5);
            bool atFront = middle.X > (front + centrePin.X) / 2;
            bool isRound = edges[i].Bulge > 0 && IsCorner(edges[i]);
            faces[i] = normal switch
            {
                { X: > 0.35, Y: < -0.3 } when atFront && isRound => SpringFace.NoseCorner,
                { X: > 0.8 } when atFront => SpringFace.EndFace,
                { Y: > 0.5 } => SpringFace.Back,
                { X: > 0.35, Y: < 0 } when atFront && IsCorner(edges[i]) => SpringFace.NoseCorner,
                { Y: < -0.2 } => middle.X > centrePin.X ? SpringFace.Underside : SpringFace.Tail,
                { X: > 0.5 } when atFront => SpringFace.EndFace,
                _ => SpringFace.Unknown,
            };
        }

        return runs.Spread(faces);
    }

    private static bool IsCorner(Edge edge) => edge.Bulge >= 0 && edge.Chord.Length < LargestCornerMm;
}
