namespace Flushback.Patterns.Parameters;

/// <summary>Dimensions of the blade; see <see cref="PatternLimits"/> for limits and meaning.</summary>
public sealed record BladeParameters
{
    /// <summary>Shape of the blade.</summary>
    public BladeFamily Family { get; init; } = BladeFamily.ClipPoint;

    /// <summary>Length from the handle's front end to the tip.</summary>
    public double? LengthMm { get; init; }

    /// <summary>Width from the spine to the edge.</summary>
    public double? WidthMm { get; init; }

    /// <summary>How far before the tip the spine begins to fall: length of the clip, or of the drop.</summary>
    public double? PointMm { get; init; }

    /// <summary>How far before the tip the edge begins to rise.</summary>
    public double? SweepMm { get; init; }

    /// <summary>Length of the ricasso, from where the kick bears to where the edge begins.</summary>
    public double RicassoMm { get; init; } = 5;

    /// <summary>Radius of the choil, the round cut before the edge; 0 for none.</summary>
    public double ChoilRadiusMm { get; init; } = 0.8;

    /// <summary>Distance of the middle of the nail nick from the pivot.</summary>
    public double? NickPlaceMm { get; init; }

    /// <summary>Length of the nail nick.</summary>
    public double NickLengthMm { get; init; } = 12;

    /// <summary>Width of the nail nick.</summary>
    public double NickWidthMm { get; init; } = 1.6;
}
