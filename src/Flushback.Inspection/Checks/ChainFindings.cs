using Flushback.Dxf;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>What was mended or stood in the way while entities were read and joined, as findings.</summary>
internal static class ChainFindings
{
    /// <summary>A bridged gap no wider than this is the rounding of some program, not an end that was missed.</summary>
    private const double RoundingMm = 0.001;

    /// <summary>The findings for the issues of one drawing; what is told by other checks is passed over.</summary>
    public static IEnumerable<InspectionFinding> Of(IEnumerable<DxfIssue> issues) =>
        issues.Select(FindingOf).OfType<InspectionFinding>();

    private static InspectionFinding? FindingOf(DxfIssue issue) =>
        issue.Code switch
        {
            DxfIssueCodes.GapBridged => About(
                issue,
                InspectionCodes.Gap,
                issue.ValueMm > RoundingMm ? Severity.Warning : Severity.Note,
                $"The ends of {Said.Entities(issue.Entities)} at {Said.At(issue.AtMm!.Value)} lie {Said.Length(issue.ValueMm!.Value)} "
                    + "apart; the gap was bridged.",
                "Join the ends in the drawing: not every controller bridges a gap."
            ),
            DxfIssueCodes.BranchPoint => About(
                issue,
                InspectionCodes.BranchPoint,
                Severity.Fault,
                $"{Said.Whole(issue.Count)} ends meet at {Said.At(issue.AtMm!.Value)}, where a contour has two: those of "
                    + $"{Said.Entities(issue.Entities)}.",
                "Delete what does not belong to the contour, or move it to a layer that is not cut."
            ) with
            {
                Value = issue.Count,
                Limit = 2,
            },
            DxfIssueCodes.ZeroLength => About(
                issue,
                InspectionCodes.ZeroLength,
                Severity.Warning,
                issue.ValueMm is { } length
                    ? $"The whole of {Said.Entities(issue.Entities)} is {Said.Length(length)} long, within the joining tolerance; it was left out."
                    : issue.Sentence,
                "Delete it: a machine may stop or burn at an edge of no length."
            ),
            DxfIssueCodes.Duplicate => About(
                issue,
                InspectionCodes.Duplicate,
                Severity.Warning,
                issue.Sentence,
                "Delete one of the two: the second would be cut again on the same line."
            ),
            DxfIssueCodes.Overlap => About(
                issue,
                InspectionCodes.Overlap,
                Severity.Warning,
                issue.Sentence,
                "Make one entity of the two: what both cover would be cut twice."
            ),
            DxfIssueCodes.EntityUnreadable
            or DxfIssueCodes.EntityInvalid
            or DxfIssueCodes.EntityNotFlat
            or DxfIssueCodes.CoordinateRange when issue.IsFatal => About(
                issue,
                InspectionCodes.Unreadable,
                Severity.Fault,
                issue.Sentence,
                "Draw it again as lines and arcs: what cannot be read is not cut."
            ),
            _ => null,
        };

    private static InspectionFinding About(
        DxfIssue issue,
        string code,
        Severity severity,
        string message,
        string advice
    ) =>
        new(
            code,
            severity,
            message,
            advice,
            IssueEntities.Of(issue),
            issue.Layer ?? "",
            issue.AtMm,
            issue.ValueMm,
            issue.LimitMm,
            issue.ValueMm is null ? "" : "mm"
        );
}
