using Flushback.Dxf.Drawings;
using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>Makes one edge of lines that lie partly on each other, and of arcs of one circle that do.</summary>
/// <remarks>
/// An overlap always leaves a loose end or a place where too many ends meet, so the search starts from units with such ends:
/// a sound drawing pays nothing.
/// </remarks>
internal static class Overlaps
{
    /// <summary>A layer with more pairs to look at is in no state to be put right pair by pair.</summary>
    private const long MostPairs = 20_000_000;

    /// <summary>The units with overlapping ones made one; null when there was none.</summary>
    public static List<ChainUnit>? Removed(
        IReadOnlyList<ChainUnit> units,
        Joints joints,
        ChainTolerances tolerances,
        List<DxfIssue> issues,
        CancellationToken ct
    )
    {
        List<int> suspects = [.. Enumerable.Range(0, units.Count).Where(i => IsSuspect(i, units[i], joints))];
        if ((long)suspects.Count * units.Count > MostPairs)
        {
            return null;
        }

        ChainUnit?[] kept = [.. units];
        bool found = false;
        foreach (int first in suspects)
        {
            ct.ThrowIfCancellationRequested();
            // A union may reach what neither part did, so those passed over are tried again.
            for (int second = 0; second < units.Count; second++)
            {
                if (
                    first == second
                    || kept[first] is not { } one
                    || kept[second] is not { } other
                    || other.Edges.Length > 1
                    || Union(one.Edges[0], other.Edges[0], tolerances.WidestMm) is not { } union
                )
                {
                    continue;
                }

                (int into, int gone) = first < second ? (first, second) : (second, first);
                double commonMm = kept[into]!.LengthMm + kept[gone]!.LengthMm - union.LengthMm;
                issues.Add(
                    Told(kept[into]!.Shape, kept[gone]!.Shape, union) with
                    {
                        Entities = [kept[into]!.Name, kept[gone]!.Name],
                        ValueMm = commonMm,
                    }
                );
                kept[into] = new ChainUnit(kept[into]!.Shape, [union]);
                kept[gone] = null;
                found = true;
                second = -1;
                if (kept[first] is null)
                {
                    break;
                }
            }
        }

        return found ? [.. kept.OfType<ChainUnit>()] : null;
    }

    private static bool IsSuspect(int unit, ChainUnit shape, Joints joints)
    {
        UnitEnd first = new(unit, IsLast: false);
        return shape.Edges.Length == 1
            && !joints.IsDropped(unit)
            && (joints.PartnerOf(first) is null || joints.PartnerOf(first.Opposite) is null);
    }

    private static Edge? Union(in Edge a, in Edge b, double toleranceMm)
    {
        if (a.IsArc != b.IsArc)
        {
            return null;
        }

        return a.IsArc ? UnionOfArcs(a, b, toleranceMm) : UnionOfLines(a, b, toleranceMm);
    }

    private static Edge? UnionOfLines(in Edge a, in Edge b, double toleranceMm)
    {
        if (b.Chord.Length > a.Chord.Length)
        {
            return UnionOfLines(b, a, toleranceMm);
        }

        Vector along = a.Chord.Normalized;
        Vector toStart = b.Start - a.Start;
        Vector toEnd = b.End - a.Start;
        bool isOnOneLine = Math.Abs(along.Cross(toStart)) <= toleranceMm && Math.Abs(along.Cross(toEnd)) <= toleranceMm;
        (double from, Point low) =
            along.Dot(toStart) <= along.Dot(toEnd) ? (along.Dot(toStart), b.Start) : (along.Dot(toEnd), b.End);
        (double to, Point high) =
            along.Dot(toStart) <= along.Dot(toEnd) ? (along.Dot(toEnd), b.End) : (along.Dot(toStart), b.Start);
        double common = Math.Min(a.Chord.Length, to) - Math.Max(0, from);
        return isOnOneLine && common > toleranceMm
            ? new Edge(from < -toleranceMm ? low : a.Start, to > a.Chord.Length + toleranceMm ? high : a.End)
            : null;
    }

    private static Edge? UnionOfArcs(in Edge a, in Edge b, double toleranceMm)
    {
        Edge second = a.Bulge > 0 == b.Bulge > 0 ? b : b.Reversed;
        if (!a.Centre.IsWithin(toleranceMm, second.Centre) || Math.Abs(a.RadiusMm - second.RadiusMm) > toleranceMm)
        {
            return null;
        }

        // Angles from the start of the first arc, in its own direction of travel.
        double sign = Math.Sign(a.Bulge);
        double sweep = Math.Abs(a.Sweep.Radians);
        double from = new Angle(sign * ((second.Start - a.Centre).Direction - (a.Start - a.Centre).Direction).Radians)
            .Positive
            .Radians;
        double slack = toleranceMm / a.RadiusMm;
        if (from > Math.Tau - slack)
        {
            from -= Math.Tau;
        }
        else if (from > sweep - slack && from + Math.Abs(second.Sweep.Radians) > Math.Tau + slack)
        {
            // It begins before the first one does.
            from -= Math.Tau;
        }

        double to = from + Math.Abs(second.Sweep.Radians);
        double low = Math.Min(0, from);
        double high = Math.Max(sweep, to);
        bool isOverlap = Math.Min(sweep, to) - Math.Max(0, from) > slack && high - low < Math.Tau - slack;
        return isOverlap
            ? Edge.Arc(
                from < -slack ? second.Start : a.Start,
                to > sweep + slack ? second.End : a.End,
                new Angle(sign * ((to > sweep + slack ? to : sweep) - (from < -slack ? from : 0)))
            )
            : null;
    }

    private static DxfIssue Told(DxfShape kept, DxfShape gone, Edge union) =>
        new(
            DxfIssueCodes.Overlap,
            DxfIssueKind.Repair,
            $"{gone.Label} on layer {gone.Layer} lies partly on {kept.Label}; they were made one, from {Wording.At(union.Start)} to "
                + $"{Wording.At(union.End)} mm.",
            gone.Handle,
            gone.Layer,
            gone.Line,
            union.Start
        );
}
