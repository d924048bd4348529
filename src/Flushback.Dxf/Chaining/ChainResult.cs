using System.Collections.Immutable;

namespace Flushback.Dxf.Chaining;

/// <summary>What a layer holds once its loose entities are joined.</summary>
/// <param name="Contours">Closed contours other than circles, in the order of their first entity.</param>
/// <param name="Circles">Full circles, in the order of their first entity.</param>
/// <param name="Issues">Leftovers as errors; what was repaired; what was left out.</param>
public sealed record ChainResult(
    ImmutableArray<Contour> Contours,
    ImmutableArray<CircleShape> Circles,
    ImmutableArray<DxfIssue> Issues
)
{
    /// <summary>Chains that do not close, in the order of their first entity; the issues tell of them too.</summary>
    public ImmutableArray<OpenPath> OpenPaths { get; init; } = [];

    /// <summary>True when something on the layer is in the way: an open chain, a branch, an unreadable entity.</summary>
    public bool HasErrors => Issues.Any(issue => issue.IsFatal);
}
