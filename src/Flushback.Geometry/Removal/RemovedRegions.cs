using System.Collections.Immutable;
using Flushback.Geometry.Crossings;

namespace Flushback.Geometry.Removal;

/// <summary>What came off between an outline and what is left of it.</summary>
public static class RemovedRegions
{
    // A stretch no longer than this is where ends were joined, not metal.
    private const double NoLengthMm = 1e-5;

    /// <summary>The areas taken off, as closed outlines apart from one another.</summary>
    /// <param name="before">The outline before.</param>
    /// <param name="after">What is left; it follows the outline before wherever nothing was taken.</param>
    /// <param name="sources">For each edge left the edge before that it lies on, or <see cref="CutOutline.New"/>.</param>
    public static ImmutableArray<Outline> Between(Outline before, Outline after, ImmutableArray<int> sources)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        int count = after.Edges.Length;
        int first = Enumerable.Range(0, count).FirstOrDefault(i => sources[i] != CutOutline.New, -1);
        if (first < 0)
        {
            return [before];
        }

        ImmutableArray<Outline>.Builder regions = ImmutableArray.CreateBuilder<Outline>();
        Kept last = Kept.Of(before, after, sources, first);
        List<Edge> made = [];
        for (int step = 1; step <= count; step++)
        {
            int i = (first + step) % count;
            if (sources[i] == CutOutline.New)
            {
                made.Add(after.Edges[i]);
                continue;
            }

            Kept next = Kept.Of(before, after, sources, i);
            if (RegionOf(before, last, made, next) is { } region)
            {
                regions.Add(region);
            }

            last = next;
            made.Clear();
        }

        return regions.ToImmutable();
    }

    private static Outline? RegionOf(Outline before, Kept last, List<Edge> made, Kept next)
    {
        Edge[] old = [.. OldStretch(before, last, next).Where(edge => edge.LengthMm > 0)];
        Edge[] left = [.. last.Beyond, .. made, .. next.Ahead];
        if (old.Sum(edge => edge.LengthMm) <= NoLengthMm && left.Sum(edge => edge.LengthMm) <= NoLengthMm)
        {
            return null;
        }

        Vertex[] border =
        [
            .. old.Concat(left.Reverse().Select(edge => edge.Reversed))
                .Select(edge => new Vertex(edge.Start, edge.Bulge)),
        ];
        return border.Length < 2 ? null : Outline.FromVertices(border);
    }

    private static IEnumerable<Edge> OldStretch(Outline before, Kept last, Kept next)
    {
        int count = before.Edges.Length;
        if (last.Source == next.Source && last.To <= next.From)
        {
            yield return before.Edges[last.Source].Part(last.To, next.From);
            yield break;
        }

        yield return before.Edges[last.Source].Part(last.To, 1);
        for (int i = (last.Source + 1) % count; i != next.Source; i = (i + 1) % count)
        {
            yield return before.Edges[i];
        }

        yield return before.Edges[next.Source].Part(0, next.From);
    }

    /// <summary>An edge that is left: the part of the old edge it covers, and what of it goes beyond where it is prolonged.</summary>
    private readonly record struct Kept(
        int Source,
        double From,
        double To,
        ImmutableArray<Edge> Ahead,
        ImmutableArray<Edge> Beyond
    )
    {
        public static Kept Of(Outline before, Outline after, ImmutableArray<int> sources, int index)
        {
            Edge edge = after.Edges[index];
            Edge old = before.Edges[sources[index]];
            double from = EdgePosition.FractionAt(old, edge.Start);
            double to = EdgePosition.FractionAt(old, edge.End);
            double startsAt = from < 0 ? EdgePosition.FractionAt(edge, old.Start) : 0;
            double endsAt = to > 1 ? EdgePosition.FractionAt(edge, old.End) : 1;
            return new Kept(
                sources[index],
                Math.Clamp(from, 0, 1),
                Math.Clamp(to, 0, 1),
                startsAt > 0 ? [edge.Part(0, startsAt)] : [],
                endsAt < 1 ? [edge.Part(endsAt, 1)] : []
            );
        }
    }
}
