using Flushback.Geometry;
using Flushback.Geometry.Offsets;

namespace Flushback.Patterns.Drawing;

/// <summary>The outline to cut when stock is left all around for grinding.</summary>
internal static class RoughOutline
{
    // An offset goes around a corner in an arc, and may leave a sliver of an edge in a hollow; as short as this they are
    // burrs on the cutter's path.
    private const double ShortestArcMm = 0.05;
    private const double ShortestEdgeMm = 0.03;
    private static readonly Angle _mostTurn = Angle.FromDegrees(20);

    /// <summary>The outline moved out by the stock; the outline itself when there is none.</summary>
    /// <remarks>
    /// Arcs about corners that hardly turn become corners again, and slivers go: there the stock may be off by a hundredth
    /// of a millimetre.
    /// </remarks>
    public static Outline Of(Outline finished, double stockMm, CancellationToken cancellation)
    {
        if (stockMm <= 0)
        {
            return finished;
        }

        List<Edge> edges = [.. Offset.Of(finished, stockMm, cancellation)[0].Border.Edges];
        for (int i = 0; i < edges.Count; i++)
        {
            if (CornerFor(edges[i]) is { } corner)
            {
                int before = (i + edges.Count - 1) % edges.Count;
                int after = (i + 1) % edges.Count;
                edges[before] = Reaching(edges[before], corner);
                edges[after] = Reaching(edges[after].Reversed, corner).Reversed;
                edges.RemoveAt(i);
                i--;
            }
        }

        return Outline.FromVertices([.. edges.Select(edge => new Vertex(edge.Start, edge.Bulge))]);
    }

    /// <summary>The corner to put in place of an edge; null when the edge stays.</summary>
    private static Point? CornerFor(Edge edge)
    {
        double length = edge.LengthMm;
        if (edge.Bulge > 0 && length < ShortestArcMm && edge.Sweep < _mostTurn)
        {
            // Where the tangents at its ends meet.
            return edge.Start + (edge.TangentAt(0) * (edge.RadiusMm * Math.Tan(edge.Sweep.Radians / 2)));
        }

        return length < ShortestEdgeMm ? edge.PointAt(0.5) : null;
    }

    /// <summary>The edge with its end moved a little, its start and the direction there kept.</summary>
    private static Edge Reaching(Edge edge, Point end) =>
        edge.IsArc ? Rounds.Leaving(edge.Start, edge.TangentAt(0), end) : new Edge(edge.Start, end);
}
