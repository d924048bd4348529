using Flushback.Dxf.Drawings;
using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>Removes second copies of an entity, whichever way round they were drawn.</summary>
internal static class Duplicates
{
    /// <summary>Each shape is compared with so many others of its place and size: a bound against hostile drawings.</summary>
    private const int MostCompared = 64;

    /// <summary>The shapes without copies, in their order; each removal is listed.</summary>
    public static List<DxfShape> Removed(
        List<DxfShape> shapes,
        ChainTolerances tolerances,
        List<DxfIssue> issues,
        CancellationToken ct
    )
    {
        // Copies have boxes of the same middle and size; what shares both is compared in full.
        Box[] boxes = [.. shapes.Select(shape => ShapeBounds.Of(shape.Geometry))];
        HashSet<int> copies = [];
        foreach (
            List<int> concentric in PointClusters.Of([.. boxes.Select(box => box.Centre)], tolerances.WidestMm, ct)
        )
        {
            Point[] sizes = [.. concentric.Select(i => new Point(boxes[i].WidthMm, boxes[i].HeightMm))];
            foreach (List<int> alike in PointClusters.Of(sizes, 2 * tolerances.WidestMm, ct))
            {
                RemoveWithin(shapes, alike.ConvertAll(k => concentric[k]), tolerances, copies, issues, ct);
            }
        }

        return [.. shapes.Where((_, i) => !copies.Contains(i))];
    }

    private static void RemoveWithin(
        List<DxfShape> shapes,
        List<int> group,
        ChainTolerances tolerances,
        HashSet<int> copies,
        List<DxfIssue> issues,
        CancellationToken ct
    )
    {
        List<int> kept = [];
        foreach (int i in group)
        {
            ct.ThrowIfCancellationRequested();
            int original = kept.FindIndex(k => AreCopies(shapes[k].Geometry, shapes[i].Geometry, tolerances));
            if (original < 0)
            {
                if (kept.Count < MostCompared)
                {
                    kept.Add(i);
                }

                continue;
            }

            copies.Add(i);
            DxfShape copy = shapes[i];
            issues.Add(
                new DxfIssue(
                    DxfIssueCodes.Duplicate,
                    DxfIssueKind.Repair,
                    $"{copy.Label} on layer {copy.Layer} is a second copy of {shapes[kept[original]].Label}; it was left out.",
                    copy.Handle,
                    copy.Layer,
                    copy.Line,
                    ShapeBounds.Of(copy.Geometry).Centre
                )
                {
                    Entities = [ChainUnit.NameOf(shapes[kept[original]]), ChainUnit.NameOf(copy)],
                }
            );
        }
    }

    private static bool AreCopies(ShapeGeometry a, ShapeGeometry b, ChainTolerances tolerances) =>
        (a, b) switch
        {
            (FullCircle { Circle: var one }, FullCircle { Circle: var other }) => one.Centre.IsWithin(
                tolerances.CopyMm(one.RadiusMm),
                other.Centre
            )
                && Math.Abs(one.RadiusMm - other.RadiusMm) <= tolerances.CopyMm(one.RadiusMm),
            (OpenChain one, OpenChain other) => one.Edges.Length == other.Edges.Length
                && (
                    Match(one.Edges.AsSpan(), other.Edges.AsSpan(), 0, isReversed: false, tolerances)
                    || Match(
                        one.Edges.AsSpan(),
                        other.Edges.AsSpan(),
                        other.Edges.Length - 1,
                        isReversed: true,
                        tolerances
                    )
                ),
            (ClosedOutline one, ClosedOutline other) => one.Outline.Edges.Length == other.Outline.Edges.Length
                && AreCopies(one.Outline, other.Outline, tolerances),
            _ => false,
        };

    private static bool AreCopies(Outline one, Outline other, ChainTolerances tolerances)
    {
        // The copy may begin at any vertex and run either way.
        for (int start = 0; start < other.Edges.Length; start++)
        {
            if (
                Match(one.Edges.AsSpan(), other.Edges.AsSpan(), start, isReversed: false, tolerances)
                || Match(one.Edges.AsSpan(), other.Edges.AsSpan(), start, isReversed: true, tolerances)
            )
            {
                return true;
            }
        }

        return false;
    }

    private static bool Match(
        ReadOnlySpan<Edge> one,
        ReadOnlySpan<Edge> other,
        int start,
        bool isReversed,
        ChainTolerances tolerances
    )
    {
        int n = one.Length;
        for (int i = 0; i < n; i++)
        {
            Edge edge = isReversed ? other[(start - i + n) % n].Reversed : other[(start + i) % n];
            double tolerance = tolerances.CopyMm(one[i].LengthMm);
            if (
                !one[i].Start.IsWithin(tolerance, edge.Start)
                || !one[i].End.IsWithin(tolerance, edge.End)
                || !one[i].PointAt(0.5).IsWithin(tolerance, edge.PointAt(0.5))
            )
            {
                return false;
            }
        }

        return true;
    }
}
