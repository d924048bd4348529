namespace Flushback.Mechanism.Knives;

/// <summary>The faces and corners of the blade, in the order of a counter-clockwise outline from the notch.</summary>
public enum BladeFace
{
    /// <summary>Not known.</summary>
    Unknown,

    /// <summary>Bottom of the notch, where the nose lies when open.</summary>
    OpenFlat,

    /// <summary>Inner corner of the notch, or the hollow cut there.</summary>
    NotchCorner,

    /// <summary>Front wall of the notch.</summary>
    Shoulder,

    /// <summary>Corner between open flat and half-stop face.</summary>
    OpenCorner,

    /// <summary>Rear face of the tang, up at 90 degrees.</summary>
    HalfStopFace,

    /// <summary>Corner between half-stop face and closed face.</summary>
    ClosedCorner,

    /// <summary>Lower face of the tang, up at 180 degrees.</summary>
    ClosedFace,

    /// <summary>The projection near the edge that bears on the spring when closed.</summary>
    Kick,

    /// <summary>From the kick to where the edge begins: choil and ricasso.</summary>
    Ricasso,

    /// <summary>From the ricasso to the tip.</summary>
    Edge,

    /// <summary>From the tip back to the shoulder.</summary>
    Spine,

    /// <summary>The round of a tang without a half stop, from the open flat to the closed face.</summary>
    Run,
}
