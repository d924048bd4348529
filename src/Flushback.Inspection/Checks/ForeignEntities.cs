using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Text, dimensions, hatches and the like on a layer that is cut.</summary>
internal static class ForeignEntities
{
    public static IEnumerable<InspectionFinding> Of(IEnumerable<DxfIssue> issues, ImmutableArray<string> cutLayers) =>
        issues
            .Where(issue =>
                issue.Code == DxfIssueCodes.EntityIgnored
                && cutLayers.Contains(issue.Layer ?? "", StringComparer.OrdinalIgnoreCase)
            )
            .Select(issue => new InspectionFinding(
                InspectionCodes.NotForCutting,
                Severity.Warning,
                $"{Said.Count(issue.Count, "entity", "entities")} on the cut layer {issue.Layer} {(issue.Count == 1 ? "is" : "are")} no outline: "
                    + issue.Sentence,
                "Move text, dimensions and hatches to a layer that is not cut: a machine may take them for contours.",
                IssueEntities.Of(issue),
                issue.Layer ?? "",
                issue.AtMm,
                issue.Count,
                0
            ));
}
