using System.Collections.Immutable;

namespace Flushback.Geometry.Removal;

/// <summary>An outline from which something was taken.</summary>
/// <param name="Outline">What is left.</param>
/// <param name="Sources">For each of its edges the edge of the outline before that it lies on, or <see cref="New"/>.</param>
public sealed record CutOutline(Outline Outline, ImmutableArray<int> Sources)
{
    /// <summary>The source of an edge that the tool made.</summary>
    public const int New = -1;
}

/// <summary>Why nothing was cut.</summary>
public enum CutFailure
{
    /// <summary>The tool touches nothing that could be taken off.</summary>
    NothingTaken,

    /// <summary>The tool never leaves the outline again: it would take everything.</summary>
    TakesEverything,

    /// <summary>The edge that ends the cut does not meet it, however far it is prolonged.</summary>
    NeighbourNotMet,

    /// <summary>No round of this radius touches both neighbours.</summary>
    NoRoundFits,
}
