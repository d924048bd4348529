using System.Collections.Immutable;
using System.Globalization;
using Flushback.Dxf;

namespace Flushback.Inspection.Checks;

/// <summary>Which entities an issue of reading or joining is about.</summary>
internal static class IssueEntities
{
    /// <summary>Handles, or places such as <c>line 120</c> where the file gives no handles.</summary>
    public static ImmutableArray<string> Of(DxfIssue issue) =>
        !issue.Entities.IsDefaultOrEmpty ? issue.Entities
        : issue.Handle is { Length: > 0 } handle ? [handle]
        : issue.Line is { } line ? [string.Create(CultureInfo.InvariantCulture, $"line {line}")]
        : [];
}
