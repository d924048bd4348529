namespace Flushback.Mechanism.Tolerances;

/// <summary>In which way a dimension may be off.</summary>
public enum Deviation
{
    /// <summary>Towards +x of the knife frame: forward, blade open.</summary>
    Forward,

    /// <summary>Towards +y of the knife frame: up.</summary>
    Up,

    /// <summary>All of a face out of the metal, parallel.</summary>
    Offset,

    /// <summary>Out of the metal at the front end of a face, as much into it at the rear end, nothing in the middle.</summary>
    Tilt,

    /// <summary>More of it: play, depth, width, preload.</summary>
    Amount,
}

/// <summary>A number that varies from part to part: zero as drawn, in millimetres.</summary>
/// <remarks>
/// The front end of a face is the one towards the blade as opened, on the shoulder and the end face the upper one, as for
/// the depths of passes.
/// </remarks>
/// <param name="Tolerance">Which tolerance it belongs to, by its place in the list.</param>
/// <param name="Deviation">In which way it is off.</param>
public readonly record struct Dimension(int Tolerance, Deviation Deviation);
