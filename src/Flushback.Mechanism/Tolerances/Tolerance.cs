using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Tolerances;

/// <summary>What a tolerance is given for.</summary>
public enum ToleranceKind
{
    /// <summary>Place of the pivot's hole in the blade, both ways.</summary>
    PivotHole,

    /// <summary>Place of the centre pin's hole in the spring, both ways.</summary>
    CentrePinHole,

    /// <summary>Place of the centre pin against the pivot, in the handle or on the bench, both ways.</summary>
    CentrePinPlace,

    /// <summary>Place of the rear pin in the handle against its hole in the spring, both ways; only in the handle.</summary>
    RearPinPlace,

    /// <summary>Play of the blade on its pivot: diameter of the hole less that of the pin.</summary>
    PivotPlay,

    /// <summary>Play of the spring on the centre pin.</summary>
    CentrePinPlay,

    /// <summary>Profile of a face: how far out or in it may lie anywhere along it.</summary>
    Profile,

    /// <summary>Depth of the spring all along, at its back; only in the handle.</summary>
    SpringDepth,

    /// <summary>Width of the spring, the thickness of its stock; only in the handle.</summary>
    SpringWidth,

    /// <summary>Preload, as the sink of the nose over the pivot; only in the handle.</summary>
    Preload,
}

/// <summary>A tolerance of a part.</summary>
/// <remarks>
/// Limits are plus and minus <paramref name="Mm"/> about what is drawn, but for play: that lies between nothing, as drawn,
/// and <paramref name="Mm"/>.
/// </remarks>
/// <param name="Kind">What it is given for.</param>
/// <param name="Face">The face, of a profile; null otherwise.</param>
/// <param name="Mm">Half the width of its zone in millimetres; of play the whole. Above zero.</param>
public readonly record struct Tolerance(ToleranceKind Kind, Site? Face, double Mm)
{
    /// <summary>True for play, whose zone lies on one side of what is drawn.</summary>
    public bool IsOneSided => Kind is ToleranceKind.PivotPlay or ToleranceKind.CentrePinPlay;

    /// <summary>From the middle of the zone to its limits.</summary>
    internal double HalfWidthMm => IsOneSided ? Mm / 2 : Mm;

    /// <summary>Middle of the zone.</summary>
    internal double MiddleMm => IsOneSided ? Mm / 2 : 0;
}
