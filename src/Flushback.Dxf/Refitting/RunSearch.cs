using Flushback.Geometry;

namespace Flushback.Dxf.Refitting;

/// <summary>Finds the longest runs of edges that are one arc each, from the first edge to the last.</summary>
/// <remarks>
/// Runs are grown by doubling and halving, so that a run of n edges costs n log n and the whole search little more than
/// the number of edges.
/// </remarks>
internal sealed class RunSearch(Edge[] edges, RefitTolerances tolerances)
{
    /// <summary>An arc stays below a whole turn, or its ends would no longer say which circle it is.</summary>
    private const double MostSweep = 350 * Math.PI / 180;

    /// <summary>A run of edges and the arc it is.</summary>
    public readonly record struct Found(int First, int End, Edge Arc, double DeviationMm)
    {
        public int Count => End - First;
    }

    /// <summary>The runs in order.</summary>
    public List<Found> All()
    {
        List<Found> found = [];
        int floor = 0;
        int start = 0;
        while (start < edges.Length)
        {
            int end = FarthestEnd(start);
            if (Accepted(start, end) is { } run)
            {
                run = BestFrom(run, floor);
                found.Add(run);
                floor = run.End;
                start = run.End;
            }
            else
            {
                // What was too short or too straight may still lead into an arc by its last edge.
                start = Math.Max(start + 1, end - 1);
            }
        }

        return found;
    }

    // Edges before the start may belong to the arc as well, or the first may be the one that spoils it.
    private Found BestFrom(Found run, int floor)
    {
        for (int end = FarthestEnd(run.First + 1); end > run.End; end = FarthestEnd(run.First + 1))
        {
            if (Accepted(run.First + 1, end) is not { } later)
            {
                break;
            }

            run = later;
        }

        while (run.First > floor && Accepted(run.First - 1, run.End) is { } longer)
        {
            run = longer;
        }

        return run;
    }

    // Past the last edge of the longest run from a start that still lies on one arc, or on one line.
    private int FarthestEnd(int start)
    {
        int good = Math.Min(start + 1, edges.Length);
        int length = 2;
        while (start + length <= edges.Length && Holds(start, start + length))
        {
            good = start + length;
            length *= 2;
        }

        int bad = Math.Min(start + length, edges.Length + 1);
        while (bad - good > 1)
        {
            int middle = good + ((bad - good) / 2);
            (good, bad) = Holds(start, middle) ? (middle, bad) : (good, middle);
        }

        return good;
    }

    private bool Holds(int start, int end) => Fitted(start, end) is not null || IsStraight(start, end);

    private Found? Accepted(int start, int end) =>
        end - start >= tolerances.FewestEdges
        && Fitted(start, end) is { } run
        && run.Arc.SagittaMm >= RefitTolerances.LeastRise * tolerances.VertexMm
            ? run
            : null;

    private Found? Fitted(int start, int end)
    {
        ReadOnlySpan<Edge> run = edges.AsSpan(start..end);
        if (PinnedArc.Of(run) is not { IsArc: true } arc || Math.Abs(arc.Sweep.Radians) > MostSweep)
        {
            return null;
        }

        Circle circle = new(arc.Centre, arc.RadiusMm);
        return RunFit.DeviationMm(run, circle, arc.Sweep.Radians, tolerances) is { } deviation
            ? new Found(start, end, arc, deviation)
            : null;
    }

    private bool IsStraight(int start, int end)
    {
        Edge chord = new(edges[start].Start, edges[end - 1].End);
        if (chord.Start == chord.End)
        {
            return false;
        }

        Vector left = chord.Chord.Left.Normalized;
        for (int i = start; i < end; i++)
        {
            bool isBeside =
                !edges[i].IsArc
                && Math.Abs((edges[i].End - chord.Start).Dot(left)) <= tolerances.VertexMm
                && edges[i].Chord.Dot(chord.Chord) > 0;
            if (!isBeside)
            {
                return false;
            }
        }

        return true;
    }
}
