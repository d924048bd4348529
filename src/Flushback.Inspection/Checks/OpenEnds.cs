using System.Collections.Immutable;
using Flushback.Dxf.Chaining;
using Flushback.Geometry;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Chains that do not close, and how far their ends are from each other.</summary>
internal static class OpenEnds
{
    /// <summary>Ends nearer than this were meant to meet; farther apart a whole piece is missing.</summary>
    private const double MeantToMeetMm = 1;

    public static IEnumerable<InspectionFinding> Of(
        ImmutableArray<(string Layer, OpenPath Path)> open,
        double joinToleranceMm
    ) => OpenContours(open, joinToleranceMm).Concat(Gaps(open, joinToleranceMm));

    private static IEnumerable<InspectionFinding> OpenContours(
        ImmutableArray<(string Layer, OpenPath Path)> open,
        double joinToleranceMm
    )
    {
        foreach ((string layer, OpenPath path) in open)
        {
            Point start = path.Edges[0].Start;
            Point end = path.Edges[^1].End;
            double apart = start.DistanceTo(end);
            yield return new InspectionFinding(
                InspectionCodes.OpenContour,
                Severity.Fault,
                $"The chain of {Said.Entities(path.Handles)} on layer {layer} does not close: its ends lie at {Said.At(start)} and "
                    + $"{Said.At(end)}, {Said.Length(apart)} apart.",
                "Draw the missing part or join the ends; what is no contour at all belongs on a layer that is not cut.",
                path.Handles,
                layer,
                start,
                apart,
                joinToleranceMm,
                "mm"
            );
        }
    }

    private static IEnumerable<InspectionFinding> Gaps(
        ImmutableArray<(string Layer, OpenPath Path)> open,
        double joinToleranceMm
    )
    {
        (Point At, int Path)[] ends =
        [
            .. open.SelectMany((entry, i) => new[] { (entry.Path.Edges[0].Start, i), (entry.Path.Edges[^1].End, i) }),
        ];
        BoxIndex index = new([.. ends.Select(end => Box.Empty.Including(end.At).Grown(MeantToMeetMm / 2))]);
        foreach ((int one, int other) in index.Pairs())
        {
            (string layer, OpenPath path) = open[ends[one].Path];
            (string otherLayer, OpenPath otherPath) = open[ends[other].Path];
            double gap = ends[one].At.DistanceTo(ends[other].At);
            if (gap > MeantToMeetMm || gap <= ChainRounding || (path.IsAtBranch && otherPath.IsAtBranch))
            {
                continue;
            }

            ImmutableArray<string> names = [EndName(path, one), EndName(otherPath, other)];
            yield return new InspectionFinding(
                InspectionCodes.Gap,
                Severity.Fault,
                $"The ends of {Said.Entities([.. names.Distinct()])} at {Said.At(ends[one].At)} lie {Said.Length(gap)} apart and were not joined"
                    + (layer == otherLayer ? "." : $": one is on layer {layer}, the other on layer {otherLayer}."),
                layer == otherLayer
                    ? "Join the ends in the drawing, or widen the joining tolerance if the gap is meant to be none."
                    : "Move both to one layer and join the ends.",
                [.. names.Distinct()],
                layer,
                ends[one].At.MidpointTo(ends[other].At),
                gap,
                joinToleranceMm,
                "mm"
            );
        }
    }

    /// <summary>Ends as near as this are joined whatever the tolerance; seen here, they meet at a branch point.</summary>
    private const double ChainRounding = 1e-6;

    private static string EndName(OpenPath path, int end) => (end & 1) == 0 ? path.Handles[0] : path.Handles[^1];
}
