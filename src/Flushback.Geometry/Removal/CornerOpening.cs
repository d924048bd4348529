using System.Collections.Immutable;
using Flushback.Geometry.Crossings;
using Flushback.Geometry.Distances;
using Flushback.Geometry.Offsets;

namespace Flushback.Geometry.Removal;

/// <summary>Rounds one corner of any form as a disc rolled inside it would leave it: the opening of the outline, there alone.</summary>
public static class CornerOpening
{
    // What lies this near to the outline before is part of it: what an opening lays back.
    private const double SameMm = 1e-6;

    /// <summary>Takes off a corner what a disc of a radius, kept inside the outline, does not reach.</summary>
    /// <param name="outline">The outline, counter-clockwise and sound.</param>
    /// <param name="before">The edge before the corner.</param>
    /// <param name="after">The edge after the corner.</param>
    /// <param name="radiusMm">Radius of the disc, above zero.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <returns>
    /// What is left; or <see cref="CutFailure.NothingTaken"/> where the corner is round enough and
    /// <see cref="CutFailure.NoRoundFits"/> where the disc does not fit into the outline.
    /// </returns>
    public static (CutOutline? Cut, CutFailure? Failure) Of(
        Outline outline,
        int before,
        int after,
        double radiusMm,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(radiusMm);
        ImmutableArray<Region> opened = Opening.Of(outline, radiusMm, cancellation);
        if (opened.IsEmpty)
        {
            return (null, CutFailure.NoRoundFits);
        }

        // Where the outline has a neck narrower than the disc, the opening comes apart there: the piece at the corner counts.
        Point corner = outline.Edges[before].End;
        Outline reached = opened.MinBy(region => Distance.Between(corner, region.Border).DistanceMm)!.Border;
        int count = outline.Edges.Length;
        int opposite = before - (count / 2);
        double cornerStarts = Travelled(before, 1);
        double cornerEnds = Travelled(after, 0);
        Gap[] gaps =
        [
            .. GapsOf(outline, reached)
                .Where(gap =>
                    Travelled(gap.From.EdgeIndex, gap.From.Fraction) <= cornerEnds
                    && Travelled(gap.To.EdgeIndex, gap.To.Fraction) >= cornerStarts
                )
                .OrderBy(gap => Travelled(gap.From.EdgeIndex, gap.From.Fraction)),
        ];
        return gaps.Length == 0 ? (null, CutFailure.NothingTaken) : (Filled(outline, gaps), null);

        double Travelled(int edge, double fraction) => ((((edge - opposite) % count) + count) % count) + fraction;
    }

    /// <summary>A stretch of the outline that the disc does not reach, and the arcs put in its place.</summary>
    private readonly record struct Gap(OutlinePlace From, OutlinePlace To, ImmutableArray<Edge> Made);

    private static List<Gap> GapsOf(Outline outline, Outline opened)
    {
        int count = opened.Edges.Length;
        int[] sources = [.. opened.Edges.Select(edge => SourceOf(outline, edge))];
        int first = Array.FindIndex(sources, source => source != CutOutline.New);
        List<Gap> gaps = [];
        if (first < 0)
        {
            return gaps;
        }

        List<Edge> made = [];
        OutlinePlace last = PlaceOn(outline, sources[first], opened.Edges[first].End);
        for (int step = 1; step <= count; step++)
        {
            int i = (first + step) % count;
            if (sources[i] == CutOutline.New)
            {
                made.Add(opened.Edges[i]);
                continue;
            }

            if (made.Count > 0)
            {
                gaps.Add(new Gap(last, PlaceOn(outline, sources[i], opened.Edges[i].Start), [.. made]));
                made.Clear();
            }

            last = PlaceOn(outline, sources[i], opened.Edges[i].End);
        }

        return gaps;
    }

    private static int SourceOf(Outline outline, Edge edge)
    {
        int nearest = OutlinePlace.Nearest(outline, edge.PointAt(0.5)).EdgeIndex;
        Edge original = outline.Edges[nearest];
        return
            IsOn(original, edge.PointAt(0.25))
            && IsOn(original, edge.PointAt(0.5))
            && IsOn(original, edge.PointAt(0.75))
            ? nearest
            : CutOutline.New;
    }

    private static bool IsOn(in Edge edge, Point p) => Distance.Between(p, edge).DistanceMm <= SameMm;

    private static OutlinePlace PlaceOn(Outline outline, int edge, Point at) =>
        new(edge, Math.Clamp(EdgePosition.FractionAt(outline.Edges[edge], at), 0, 1));

    private static CutOutline Filled(Outline outline, Gap[] gaps)
    {
        ChainEdit edit = new();
        for (int g = 0; g < gaps.Length; g++)
        {
            foreach (Edge edge in gaps[g].Made)
            {
                edit.Add(edge, CutOutline.New);
            }

            AddKept(edit, outline, gaps[g].To, gaps[(g + 1) % gaps.Length].From);
        }

        return edit.Finish(outline);
    }

    private static void AddKept(ChainEdit edit, Outline outline, OutlinePlace from, OutlinePlace to)
    {
        int count = outline.Edges.Length;
        if (from.EdgeIndex == to.EdgeIndex && from <= to)
        {
            edit.Add(outline.Edges[from.EdgeIndex].Part(from.Fraction, to.Fraction), from.EdgeIndex);
            return;
        }

        edit.Add(outline.Edges[from.EdgeIndex].Part(from.Fraction, 1), from.EdgeIndex);
        for (int i = (from.EdgeIndex + 1) % count; i != to.EdgeIndex; i = (i + 1) % count)
        {
            edit.Add(outline.Edges[i], i);
        }

        edit.Add(outline.Edges[to.EdgeIndex].Part(0, to.Fraction), to.EdgeIndex);
    }
}
