using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Geometry;

namespace Flushback.Dxf.Refitting;

/// <summary>Turns runs of short edges back into the arcs and circles they were cut from.</summary>
/// <remarks>
/// Nothing is guessed: every vertex of a run lies on its arc within <see cref="RefitTolerances.VertexMm"/>, every straight
/// edge within <see cref="RefitTolerances.ChordMm"/> and turns less than <see cref="RefitTolerances.WidestEdge"/>, so that a
/// hexagon stays one. All else stays to the last bit, and an arc begins and ends at vertices that were there.
/// </remarks>
public static class ArcRefitting
{
    /// <summary>Above this angle an arc is written as two, which keeps the digits of its bulge.</summary>
    private const double MostSweep = 1.5 * Math.PI;

    /// <summary>A closed outline with its arcs back; a circle when all of it lies on one.</summary>
    public static RefittedShape Of(Outline outline, RefitTolerances tolerances)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(tolerances);
        if (WholeCircle.Of(outline, tolerances) is var (circle, deviation))
        {
            Point start = outline.Edges[0].Start;
            Angle turn = new(outline.IsCounterClockwise ? Math.Tau : -Math.Tau);
            return new RefittedShape(
                new FullCircle(circle),
                [new Refit(0, outline.Edges.Length, start, start, circle, turn, deviation)]
            );
        }

        Edge[] edges = [.. outline.Edges];
        if (new RunSearch(edges, tolerances).All() is not [var run, ..])
        {
            return new RefittedShape(new ClosedOutline(outline), []);
        }

        // The first edge may lie in the middle of an arc; where a run was found to begin or to end, none does.
        int first = run.First > 0 ? run.First : run.End % edges.Length;
        edges = [.. outline.Edges[first..], .. outline.Edges[..first]];
        List<RunSearch.Found> found = new RunSearch(edges, tolerances).All();
        ImmutableArray<Edge> refitted = Replaced(edges, found);
        Outline whole = Outline.FromVertices([.. refitted.Select(edge => new Vertex(edge.Start, edge.Bulge))]);
        return new RefittedShape(new ClosedOutline(whole), Told(found, first, edges.Length));
    }

    /// <summary>An open chain with its arcs back.</summary>
    /// <param name="edges">Edges, each beginning where the one before ends.</param>
    /// <param name="tolerances">What is taken for an arc.</param>
    public static RefittedShape Of(ImmutableArray<Edge> edges, RefitTolerances tolerances)
    {
        ArgumentNullException.ThrowIfNull(tolerances);
        List<RunSearch.Found> found = new RunSearch([.. edges], tolerances).All();
        return new RefittedShape(new OpenChain(Replaced([.. edges], found)), Told(found, 0, edges.Length));
    }

    private static ImmutableArray<Edge> Replaced(Edge[] edges, List<RunSearch.Found> found)
    {
        List<Edge> refitted = new(edges.Length);
        int next = 0;
        foreach (RunSearch.Found run in found)
        {
            refitted.AddRange(edges.AsSpan(next..run.First));
            bool isLong = Math.Abs(run.Arc.Sweep.Radians) > MostSweep;
            refitted.AddRange(isLong ? Halves(run.Arc) : [run.Arc]);
            next = run.End;
        }

        refitted.AddRange(edges.AsSpan(next..));
        return [.. refitted];
    }

    private static Edge[] Halves(Edge arc)
    {
        Point middle = arc.PointAt(0.5);
        double bulge = arc.Part(0, 0.5).Bulge;
        return [new Edge(arc.Start, middle, bulge), new Edge(middle, arc.End, bulge)];
    }

    private static ImmutableArray<Refit> Told(List<RunSearch.Found> found, int first, int count) =>
        [
            .. found.Select(run => new Refit(
                (run.First + first) % count,
                run.Count,
                run.Arc.Start,
                run.Arc.End,
                new Circle(run.Arc.Centre, run.Arc.RadiusMm),
                run.Arc.Sweep,
                run.DeviationMm
            )),
        ];
}
