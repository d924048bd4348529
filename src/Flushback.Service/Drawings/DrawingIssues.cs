using Flushback.Dxf;
using Flushback.Service.Errors;
using Flushback.Service.Limits;

namespace Flushback.Service.Drawings;

/// <summary>What a reader of drawings has to say, in the terms of the contract.</summary>
internal static class DrawingIssues
{
    /// <summary>Gathers the errors.</summary>
    /// <param name="issues">What the reader said.</param>
    /// <param name="fields">Where the request holds the drawing.</param>
    /// <param name="violations">Gathers what is wrong.</param>
    /// <exception cref="Grpc.Core.RpcException">RESOURCE_EXHAUSTED when the drawing is over a limit.</exception>
    public static void Report(IReadOnlyList<DxfIssue> issues, DrawingFields fields, Violations violations)
    {
        foreach (DxfIssue issue in issues.Where(issue => issue.IsFatal))
        {
            if (issue.Kind == DxfIssueKind.LimitExceeded && issue.Code != DxfIssueCodes.CoordinateRange)
            {
                throw RequestErrors.OverLimit(DrawingLimits.Told(issue));
            }

            string field = issue.Code == DxfIssueCodes.UnitMissing ? fields.Unit : fields.Dxf;
            violations.Add(field, issue.Code, issue.Sentence);
        }
    }

    /// <summary>What was mended or left aside, each in one sentence.</summary>
    public static IEnumerable<string> Told(IReadOnlyList<DxfIssue> issues) =>
        issues.Where(issue => !issue.IsFatal).Select(issue => issue.Sentence);
}

/// <summary>The fields of a request that hold a drawing.</summary>
/// <param name="Dxf">Path of the field with the file's bytes.</param>
/// <param name="Unit">Path of the field that overrides the file's unit.</param>
internal sealed record DrawingFields(string Dxf, string Unit);
