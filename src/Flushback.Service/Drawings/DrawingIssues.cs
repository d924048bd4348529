using Flushback.Dxf;
using Flushback.Service.Errors;
using Flushback.Service.Limits;

namespace Flushback.Service.Drawings;

/// <summary>What a reader of drawings has to say, in the terms of the contract.</summary>
internal static class DrawingIssues
{
    /// <summary>Gathers the errors.</summary>
    /// <exception cref="Grpc.Core.RpcException">RESOURCE_EXHAUSTED when the drawing is over a limit.</exception>
    public static void Report(IReadOnlyList<DxfIssue> issues, Violations violations)
    {
        foreach (DxfIssue issue in issues.Where(issue => issue.IsFatal))
        {
            if (issue.Kind == DxfIssueKind.LimitExceeded && issue.Code != DxfIssueCodes.CoordinateRange)
            {
                throw RequestErrors.OverLimit(DrawingLimits.Told(issue));
            }

            violations.Add(FieldOf(issue), issue.Code, issue.Sentence);
        }
    }

    /// <summary>What was mended or left aside, each in one sentence.</summary>
    public static IEnumerable<string> Told(IReadOnlyList<DxfIssue> issues) =>
        issues.Where(issue => !issue.IsFatal).Select(issue => issue.Sentence);

    private static string FieldOf(DxfIssue issue) =>
        issue.Code == DxfIssueCodes.UnitMissing ? DrawingReader.UnitField : DrawingReader.DxfField;
}
