namespace Flushback.Dxf.Tags;

/// <summary>The groups of a file, or the one reason why it has none.</summary>
internal readonly record struct TagScan(TagFile? File, DxfIssue? Issue)
{
    public static TagScan Failed(string code, string sentence, int? line = null) =>
        new(null, new DxfIssue(code, DxfIssueKind.Error, sentence, Line: line));

    public static TagScan TooLarge(DxfLimitHit limit, string sentence) =>
        new(null, new DxfIssue(DxfIssueCodes.TooLarge, DxfIssueKind.LimitExceeded, sentence) { Limit = limit });
}
