namespace Flushback.Mechanism.Knives;

/// <summary>The faces and corners of the spring.</summary>
public enum SpringFace
{
    /// <summary>Not known.</summary>
    Unknown,

    /// <summary>Front face, against the shoulder when open.</summary>
    EndFace,

    /// <summary>Lower front corner, between end face and underside.</summary>
    NoseCorner,

    /// <summary>Face to the tang, forward of the centre pin.</summary>
    Underside,

    /// <summary>Face to the blade, behind the centre pin.</summary>
    Tail,

    /// <summary>Face to the hand.</summary>
    Back,
}
