namespace Flushback.Patterns.Parameters;

/// <summary>Dimensions of the tang; see <see cref="PatternLimits"/> for limits and meaning.</summary>
public sealed record TangParameters
{
    /// <summary>True for a tang that stops at the half stop; false for a round tang.</summary>
    public bool HasHalfStop { get; init; } = true;

    /// <summary>Height of the open corner over the pivot, where the spring's underside lies when open.</summary>
    public double HeightMm { get; init; } = 4.5;

    /// <summary>Length from the foot of the shoulder to the rear of the tang.</summary>
    public double? LengthMm { get; init; }

    /// <summary>Round tang only: how far the back rises while the round of the tang carries the spring.</summary>
    public double RunRiseMm { get; init; } = 1.4;

    /// <summary>Depth of the open flat under the spine: the height of the shoulder.</summary>
    public double? OpenFlatDepthMm { get; init; }

    /// <summary>Slope of the open flat, rising to the rear, so that the open corner bears.</summary>
    public double OpenFlatTiltDeg { get; init; } = 1;

    /// <summary>Angle between open flat, were it level, and shoulder; below 90 the shoulder overhangs the nose.</summary>
    public double ShoulderDeg { get; init; } = 70;

    /// <summary>Radius of the shoulder's top.</summary>
    public double ShoulderRadiusMm { get; init; } = 0.2;

    /// <summary>Radius of the hollow in the notch's inner corner; 0 leaves the corner sharp.</summary>
    public double NotchRadiusMm { get; init; } = 0.4;

    /// <summary>Radius of the open corner.</summary>
    public double OpenCornerRadiusMm { get; init; } = 0.3;

    /// <summary>Radius of the closed corner.</summary>
    public double ClosedCornerRadiusMm { get; init; } = 0.3;

    /// <summary>Depth of the hollow in the open flat.</summary>
    public double OpenReliefMm { get; init; } = 0.05;

    /// <summary>Depth of the hollow in the half-stop face.</summary>
    public double HalfStopReliefMm { get; init; } = 0.08;

    /// <summary>Depth of the hollow in the closed face.</summary>
    public double ClosedReliefMm { get; init; } = 0.08;

    /// <summary>Straight length left at either end of a hollow face.</summary>
    public double ReliefLandMm { get; init; } = 0.5;

    /// <summary>How far the kick stands out under the edge.</summary>
    public double? KickHeightMm { get; init; }

    /// <summary>How far in front of the pivot the kick bears on the spring.</summary>
    public double? KickPlaceMm { get; init; }

    /// <summary>Radius of the kick.</summary>
    public double KickRadiusMm { get; init; } = 0.8;
}
