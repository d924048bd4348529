namespace Flushback.Catalogue.Designs;

/// <summary>Dimensions of the notch's shoulder and of the blade in front of the tang; knife frame, millimetres.</summary>
public sealed record BladeDesign
{
    /// <summary>Angle in the void between the flat (when level) and the shoulder; below 90 it overhangs the nose.</summary>
    public double UndercutDeg { get; init; } = 70;

    /// <summary>Height of the shoulder's top over the spring's underside.</summary>
    public double ShoulderMm { get; init; } = 2.8;

    /// <summary>Radius of the shoulder's top.</summary>
    public double ShoulderRadiusMm { get; init; }

    /// <summary>Gap along x between shoulder and end face as drawn, where they are nearest.</summary>
    public double ShoulderGapMm { get; init; }

    /// <summary>Length of the two sides cut away by the relief in the notch's inner corner; 0 leaves it sharp.</summary>
    public double CornerReliefMm { get; init; }

    /// <summary>Distance of the tip in front of the pivot.</summary>
    public double LengthMm { get; init; } = 68;

    /// <summary>How far the edge lies below the pivot.</summary>
    public double EdgeMm { get; init; } = 2;

    /// <summary>Height of the tip over the pivot.</summary>
    public double TipMm { get; init; } = 1.5;
}
