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
    /// <summary>The limit it is about; null for every other issue.</summary>
    public DxfLimitHit? Limit { get; init; }

    /// <summary>True when the drawing or layer cannot be used: an error or a limit.</summary>
    public bool IsFatal => Kind is DxfIssueKind.Error or DxfIssueKind.LimitExceeded;
}
