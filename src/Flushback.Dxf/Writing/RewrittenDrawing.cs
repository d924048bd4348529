using System.Collections.Immutable;

namespace Flushback.Dxf.Writing;

/// <summary>A copy of a drawing with some of its entities replaced.</summary>
/// <param name="Bytes">The file.</param>
/// <param name="Refused">Replacements that were not made, because something to leave out stands in a block.</param>
/// <param name="Issues">Why they were not, and what in the file still names an entity that is gone: notices.</param>
public sealed record RewrittenDrawing(
    byte[] Bytes,
    ImmutableArray<DxfReplacement> Refused,
    ImmutableArray<DxfIssue> Issues
);
