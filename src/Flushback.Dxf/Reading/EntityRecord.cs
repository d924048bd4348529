namespace Flushback.Dxf.Reading;

/// <summary>An entity as it stands in the file: what every entity has, and which groups are its own.</summary>
/// <param name="Type">Entity type, in upper case.</param>
/// <param name="Handle">Handle in upper case; empty when it has none.</param>
/// <param name="Layer">Layer name; <c>0</c> when it names none.</param>
/// <param name="Line">Line at which it begins.</param>
/// <param name="First">Index of its first group.</param>
/// <param name="End">Index past its last own group.</param>
/// <param name="FollowersEnd">Index past the vertices or attributes that belong to it; equal to <paramref name="End"/> when none do.</param>
internal readonly record struct EntityRecord(
    string Type,
    string Handle,
    string Layer,
    int Line,
    int First,
    int End,
    int FollowersEnd
)
{
    /// <summary>True when it lies in paper space.</summary>
    public bool IsInPaperSpace { get; init; }

    /// <summary>True when it stands in a block and not in model space itself.</summary>
    public bool IsInBlock { get; init; }

    /// <summary>True when it is switched invisible by itself.</summary>
    public bool IsInvisible { get; init; }

    /// <summary>Which way the normal of its own plane points.</summary>
    public Facing Facing { get; init; }

    /// <summary>What <see cref="Line"/> counts: lines, or bytes of a binary file.</summary>
    public string PlaceWord { get; init; } = "line";

    /// <summary>Where it begins.</summary>
    public string Place => $"{PlaceWord} {Wording.Whole(Line)}";

    /// <summary>How a sentence names it.</summary>
    public string Label =>
        Handle.Length > 0 ? $"{Type} {Handle} on layer {Layer} ({Place})" : $"{Type} on layer {Layer} ({Place})";
}

/// <summary>Which way the normal of an entity's own plane points (groups 210, 220, 230).</summary>
internal enum Facing
{
    /// <summary>Towards the viewer: coordinates are those of the drawing.</summary>
    Up,

    /// <summary>Away from the viewer: x of the entity's own coordinates runs the other way.</summary>
    Down,

    /// <summary>Anywhere else: the entity does not lie flat.</summary>
    Tilted,
}
