namespace Flushback.Geometry.Approximation;

/// <summary>What makes a flattened polygon unsound, and where.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="At">Where, in the frame of the outlines.</param>
public readonly record struct PolygonFlaw(PolygonFlawKind Kind, Point At);

/// <summary>What can be wrong with a flattened polygon and its holes.</summary>
public enum PolygonFlawKind
{
    /// <summary>A kind that has no name here.</summary>
    Other,

    /// <summary>Borders pass through one another.</summary>
    SelfCrossing,

    /// <summary>A border touches itself in a point.</summary>
    SelfTouching,

    /// <summary>A hole lies outside the border.</summary>
    HoleOutside,

    /// <summary>A hole lies within another hole.</summary>
    HoleInHole,

    /// <summary>Two holes are the same.</summary>
    DuplicateHole,

    /// <summary>Holes that touch cut the inside into separate pieces.</summary>
    CutApart,

    /// <summary>Too few different points to enclose anything.</summary>
    TooFewPoints,

    /// <summary>A coordinate that is not a finite number.</summary>
    NotFinite,
}
