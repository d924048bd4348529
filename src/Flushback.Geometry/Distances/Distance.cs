using Flushback.Geometry.Chains;

namespace Flushback.Geometry.Distances;

/// <summary>Shortest distances between points, edges and outlines, exact on lines and arcs.</summary>
/// <remarks>
/// Closed forms throughout: nothing is flattened or searched. Results are good to about 1e-15 of the largest coordinate
/// or radius that takes part. Outlines are borders here, not areas: the distance from a point deep inside is positive.
/// </remarks>
public static class Distance
{
    /// <summary>Shortest way from a point to an edge.</summary>
    public static Nearest Between(Point p, in Edge edge) => PointToEdge.Between(p, edge);

    /// <summary>Shortest way between two edges; zero where they cross or touch.</summary>
    public static Nearest Between(in Edge a, in Edge b) => EdgeToEdge.Between(a, b);

    /// <summary>Shortest way from a point to the border of an outline.</summary>
    public static Nearest Between(Point p, Outline outline) => OutlineDistance.Between(p, outline.Boxes);

    /// <summary>Shortest way between the borders of two outlines; zero where they cross or touch.</summary>
    public static Nearest Between(Outline a, Outline b) => OutlineDistance.Between(a.Boxes, b.Boxes);

    /// <summary>Shortest way from a point to any of a few edges; <see cref="Nearest.None"/> when there are none.</summary>
    public static Nearest Between(Point p, ReadOnlySpan<Edge> edges)
    {
        Nearest best = Nearest.None;
        foreach (ref readonly Edge edge in edges)
        {
            best = Nearest.Shorter(best, PointToEdge.Between(p, edge));
        }

        return best;
    }

    /// <summary>
    /// Shortest way from a chain to any of a few edges; <see cref="Nearest.None"/> when either is empty.
    /// </summary>
    public static Nearest Between(EdgeChain chain, ReadOnlySpan<Edge> edges)
    {
        Nearest best = Nearest.None;
        foreach (ref readonly Edge edge in edges)
        {
            OutlineDistance.Shorten(ref best, chain.Boxes, edge);
        }

        return best;
    }

    /// <summary>
    /// Shortest way between two sets of edges, such as two stretches of outlines; <see cref="Nearest.None"/> when either
    /// is empty.
    /// </summary>
    public static Nearest Between(ReadOnlySpan<Edge> a, ReadOnlySpan<Edge> b)
    {
        Nearest best = Nearest.None;
        foreach (ref readonly Edge first in a)
        {
            Box box = first.Bounds;
            foreach (ref readonly Edge second in b)
            {
                // Every point of an arc lies within its sagitta of its chord.
                double reachOfSecond = second.Chord.Length + second.SagittaMm;
                if (box.GapTo(second.Start) - reachOfSecond < best.DistanceMm)
                {
                    best = Nearest.Shorter(best, EdgeToEdge.Between(first, second));
                }
            }
        }

        return best;
    }
}
