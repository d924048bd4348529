using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Dxf;

/// <summary>Something to say about a drawing: what is wrong, where, and what to do.</summary>
/// <param name="Code">One of <see cref="DxfIssueCodes"/>: stable, for programs.</param>
/// <param name="Kind">What it means for the drawing.</param>
/// <param name="Sentence">
/// One sentence for the maker: entity type, handle, layer, line or coordinate, and what to do about it.
/// </param>
/// <param name="Handle">Handle of the entity, when it has one and the issue is about one.</param>
/// <param name="Layer">Layer it is about.</param>
/// <param name="Line">Line of the file, counted from 1; for a binary file the byte offset.</param>
/// <param name="AtMm">Where in the drawing, in millimetres in the drawing's own frame.</param>
public sealed record DxfIssue(
    string Code,
    DxfIssueKind Kind,
    string Sentence,
    string? Handle = null,
    string? Layer = null,
    int? Line = null,
    Point? AtMm = null
)
{
    /// <summary>Every entity it is about, by handle or, where the file gives none, by place; empty when that was not kept.</summary>
    public ImmutableArray<string> Entities { get; init; } = [];

    /// <summary>How many entities it stands for, when alike ones are told together.</summary>
    public int Count { get; init; } = 1;

    /// <summary>
    /// Type of the entity, such as <c>LINE</c>, when something was put right in one that stands in model space itself and
    /// not in a block: with its line and handle it can be found in the file.
    /// </summary>
    public string? EntityType { get; init; }

    /// <summary>The length that was found, such as a gap's, in millimetres; null when it is about no length.</summary>
    public double? ValueMm { get; init; }

    /// <summary>The length it was held against, in millimetres.</summary>
    public double? LimitMm { get; init; }

    /// <summary>The limit it is about; null for every other issue.</summary>
    public DxfLimitHit? Limit { get; init; }

    /// <summary>True when the drawing or layer cannot be used: an error or a limit.</summary>
    public bool IsFatal => Kind is DxfIssueKind.Error or DxfIssueKind.LimitExceeded;
}
