using System.Collections.Immutable;
using Flushback.Dxf.Drawings;

namespace Flushback.Dxf.Reading;

/// <summary>A drawing and what there is to say about it.</summary>
/// <param name="Drawing">The drawing; null when any issue is an error or a limit.</param>
/// <param name="Issues">Errors, repairs and notices, in the order they were met.</param>
public sealed record DxfReadResult(DxfDrawing? Drawing, ImmutableArray<DxfIssue> Issues);
