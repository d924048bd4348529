using System.Collections.Immutable;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection;

/// <summary>Puts findings in order: worst first, then as their entities stand in the file.</summary>
internal static class FindingOrder
{
    /// <summary>So many findings of one kind are told one by one; the rest is counted.</summary>
    private const int MostOfAKind = 200;

    public static ImmutableArray<InspectionFinding> Of(IEnumerable<InspectionFinding> findings, EntityOrder order) =>
        [
            .. findings
                .GroupBy(finding => (finding.Code, finding.Severity))
                .SelectMany(kind => Bounded([.. InFile(kind, order)]))
                .OrderByDescending(finding => finding.Severity)
                .ThenBy(finding => order.Of(finding.Handles)),
        ];

    private static IEnumerable<InspectionFinding> InFile(IEnumerable<InspectionFinding> findings, EntityOrder order) =>
        findings.OrderBy(finding => order.Of(finding.Handles));

    private static IEnumerable<InspectionFinding> Bounded(ImmutableArray<InspectionFinding> kind)
    {
        if (kind.Length <= MostOfAKind)
        {
            return kind;
        }

        InspectionFinding first = kind[MostOfAKind];
        int rest = kind.Length - MostOfAKind;
        return kind.Take(MostOfAKind)
            .Append(
                first with
                {
                    Message =
                        $"And {Said.Whole(rest)} more of the kind {first.Code}, the next of them: {first.Message}",
                }
            );
    }
}
