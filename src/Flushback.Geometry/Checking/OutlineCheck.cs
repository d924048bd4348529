using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Flushback.Geometry.Checking;

/// <summary>Finds out whether vertices make an outline that can be computed with: closed, simple, with an area.</summary>
/// <remarks>Nothing is repaired. Either direction of travel is right.</remarks>
public static class OutlineCheck
{
    /// <summary>No more flaws than this are collected: a drawing with so many has one cause, not a hundred.</summary>
    public const int MostFlaws = 100;

    /// <summary>All that is wrong with the vertices of an outline; empty when it is sound.</summary>
    /// <param name="vertices">The vertices in order, the last one joined to the first.</param>
    /// <param name="tolerances">What counts as equal, touching or too far.</param>
    /// <param name="cancellation">Ends the search for crossings early, by an exception.</param>
    /// <returns>
    /// Flaws of single vertices and edges in their order or, only when there are none, those of the whole: crossings,
    /// touches and overlaps by their vertices, or a want of area.
    /// </returns>
    /// <exception cref="OperationCanceledException">Cancellation was asked for.</exception>
    public static ImmutableArray<OutlineFlaw> FlawsOf(
        ReadOnlySpan<Vertex> vertices,
        GeometryTolerances tolerances,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(tolerances);
        ImmutableArray<OutlineFlaw> single = SingleFlaws(vertices, tolerances);
        return single.IsEmpty ? FlawsOfWhole(Outline.FromVertices(vertices), tolerances, cancellation) : single;
    }

    /// <summary>The outline through the vertices, when nothing is wrong with them.</summary>
    /// <inheritdoc cref="FlawsOf"/>
    /// <param name="vertices">The vertices in order, the last one joined to the first.</param>
    /// <param name="tolerances">What counts as equal, touching or too far.</param>
    /// <param name="outline">The outline; null when there are flaws.</param>
    /// <param name="flaws">What is wrong; empty when there is an outline.</param>
    /// <param name="cancellation">Ends the search for crossings early, by an exception.</param>
    /// <returns>True when there is an outline.</returns>
    public static bool TryOutline(
        ReadOnlySpan<Vertex> vertices,
        GeometryTolerances tolerances,
        [NotNullWhen(true)] out Outline? outline,
        out ImmutableArray<OutlineFlaw> flaws,
        CancellationToken cancellation = default
    )
    {
        flaws = FlawsOf(vertices, tolerances, cancellation);
        outline = flaws.IsEmpty ? Outline.FromVertices(vertices) : null;
        return outline is not null;
    }

    private static ImmutableArray<OutlineFlaw> SingleFlaws(ReadOnlySpan<Vertex> vertices, GeometryTolerances tolerances)
    {
        if (vertices.Length < 2)
        {
            Point at = vertices.IsEmpty ? Point.Origin : vertices[0].Position;
            return [new OutlineFlaw(OutlineFlawKind.TooFewVertices, 0, at)];
        }

        ImmutableArray<OutlineFlaw>.Builder flaws = ImmutableArray.CreateBuilder<OutlineFlaw>();
        for (int i = 0; i < vertices.Length && flaws.Count < MostFlaws; i++)
        {
            Vertex next = vertices[(i + 1) % vertices.Length];
            if (FlawOf(vertices[i], next, tolerances) is { } kind)
            {
                flaws.Add(new OutlineFlaw(kind, i, vertices[i].Position));
            }
        }

        return flaws.Count == 0 && IsLineThereAndBack(vertices)
            ? [new OutlineFlaw(OutlineFlawKind.TooFewVertices, 0, vertices[0].Position)]
            : flaws.ToImmutable();
    }

    private static OutlineFlawKind? FlawOf(Vertex here, Vertex next, GeometryTolerances tolerances)
    {
        if (!here.Position.IsFinite || !double.IsFinite(here.Bulge))
        {
            return OutlineFlawKind.NotFinite;
        }

        Edge edge = new(here.Position, next.Position, here.Bulge);
        double farthest = Math.Max(Math.Abs(here.Position.X), Math.Abs(here.Position.Y));
        if (farthest > tolerances.CoordinateLimitMm || edge.SagittaMm > 2 * tolerances.CoordinateLimitMm)
        {
            return OutlineFlawKind.CoordinateOutOfRange;
        }

        if (!here.Position.IsWithin(tolerances.NoLengthMm, next.Position))
        {
            return null;
        }

        return edge.IsArc ? OutlineFlawKind.BulgeBetweenEqualPoints : OutlineFlawKind.ZeroLengthEdge;
    }

    private static bool IsLineThereAndBack(ReadOnlySpan<Vertex> vertices) =>
        vertices.Length == 2
        && !new Edge(vertices[0].Position, vertices[1].Position, vertices[0].Bulge).IsArc
        && !new Edge(vertices[1].Position, vertices[0].Position, vertices[1].Bulge).IsArc;

    private static ImmutableArray<OutlineFlaw> FlawsOfWhole(
        Outline outline,
        GeometryTolerances tolerances,
        CancellationToken cancellation
    )
    {
        SelfMeetings search = new(outline, tolerances.TouchingMm, cancellation);
        ImmutableArray<OutlineFlaw> meetings = search.Run();
        bool hasArea = 2 * outline.AreaMm2 > tolerances.NoWidthMm * outline.PerimeterMm;
        return meetings.IsEmpty && !hasArea
            ? [new OutlineFlaw(OutlineFlawKind.ZeroArea, 0, outline.Edges[0].Start)]
            : meetings;
    }
}
