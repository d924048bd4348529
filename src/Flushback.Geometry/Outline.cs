using System.Collections.Immutable;
using Flushback.Geometry.Chains;
using Flushback.Geometry.Distances;

namespace Flushback.Geometry;

/// <summary>A closed chain of lines and circular arcs; the last edge ends where the first begins. Immutable.</summary>
/// <remarks>
/// An outline keeps the direction it was drawn in; <see cref="CounterClockwise"/> gives the material on the left.
/// It is not checked for crossings here: see <c>OutlineCheck</c>.
/// </remarks>
public sealed class Outline
{
    /// <summary>
    /// How near the border a point counts as lying on it, in millimetres: far above rounding at a coordinate of ten
    /// metres, far below anything that can be cut or measured.
    /// </summary>
    public const double BorderMm = 1e-9;

    private BoxTree? _boxes;

    private Outline(ImmutableArray<Edge> edges)
    {
        Edges = edges;
        SignedAreaMm2 = AreaOf(edges);
    }

    /// <summary>The edges in order, each starting exactly where the one before ends.</summary>
    public ImmutableArray<Edge> Edges { get; }

    /// <summary>Enclosed area in square millimetres, positive when travelled counter-clockwise.</summary>
    public double SignedAreaMm2 { get; }

    /// <summary>Enclosed area in square millimetres.</summary>
    public double AreaMm2 => Math.Abs(SignedAreaMm2);

    /// <summary>True when the material lies on the left of the direction of travel.</summary>
    public bool IsCounterClockwise => SignedAreaMm2 > 0;

    /// <summary>Length of the whole outline in millimetres.</summary>
    public double PerimeterMm => Edges.Sum(edge => edge.LengthMm);

    /// <summary>Smallest axis-aligned box that holds the outline.</summary>
    public Box Bounds => Boxes[BoxTree.Root];

    /// <summary>Boxes about its edges, made when first asked for; two threads may both make them, to the same effect.</summary>
    internal BoxTree Boxes => _boxes ??= new BoxTree(Edges);

    /// <summary>An outline through the given vertices, closed from the last to the first.</summary>
    /// <exception cref="ArgumentException">
    /// Fewer than two vertices, or a coordinate or bulge that is not finite: such input is refused before it gets here.
    /// </exception>
    public static Outline FromVertices(ReadOnlySpan<Vertex> vertices)
    {
        if (vertices.Length < 2)
        {
            throw new ArgumentException("An outline needs at least two vertices.", nameof(vertices));
        }

        ImmutableArray<Edge>.Builder edges = ImmutableArray.CreateBuilder<Edge>(vertices.Length);
        for (int i = 0; i < vertices.Length; i++)
        {
            Vertex here = vertices[i];
            if (!here.Position.IsFinite || !double.IsFinite(here.Bulge))
            {
                throw new ArgumentException("Coordinates and bulges must be finite numbers.", nameof(vertices));
            }

            edges.Add(new Edge(here.Position, vertices[(i + 1) % vertices.Length].Position, here.Bulge));
        }

        return new Outline(edges.MoveToImmutable());
    }

    /// <summary>The vertices in order, each with the bulge of the edge that leaves it.</summary>
    public ImmutableArray<Vertex> Vertices => [.. Edges.Select(edge => new Vertex(edge.Start, edge.Bulge))];

    /// <summary>The same shape travelled the other way.</summary>
    public Outline Reversed() => new([.. Edges.Reverse().Select(edge => edge.Reversed)]);

    /// <summary>The same shape with the material on the left: this outline, or its reverse.</summary>
    public Outline CounterClockwise() => IsCounterClockwise ? this : Reversed();

    /// <summary>The moved outline, travelled in the same order (a mirror turns the sign of its area).</summary>
    public Outline Transformed(RigidMotion motion) => new([.. Edges.Select(motion.Apply)]);

    /// <summary>True when the point lies inside or on the border, whichever way the outline is travelled.</summary>
    /// <remarks>
    /// Even-odd rule, by signs and without flattening. A point within <see cref="BorderMm"/> of the border lies on it.
    /// </remarks>
    public bool Contains(Point p) =>
        Containment.IsInside(p, Edges.AsSpan()) || Distance.Between(p, this).DistanceMm <= BorderMm;

    /// <summary>Distance of a point from the border in millimetres: positive inside, negative outside.</summary>
    public double SignedDistanceMm(Point p)
    {
        double distance = Distance.Between(p, this).DistanceMm;
        return Containment.IsInside(p, Edges.AsSpan()) ? distance : -distance;
    }

    private static double AreaOf(ImmutableArray<Edge> edges)
    {
        // Shoelace about the first vertex, which keeps digits when the drawing lies far from the origin, and a
        // circular segment for each arc.
        Point anchor = edges[0].Start;
        double area = 0;
        foreach (Edge edge in edges)
        {
            area += ((edge.Start - anchor).Cross(edge.End - anchor) / 2) + edge.SegmentAreaMm2;
        }

        return area;
    }
}
