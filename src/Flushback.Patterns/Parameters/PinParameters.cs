namespace Flushback.Patterns.Parameters;

/// <summary>Diameters and places of the pins; see <see cref="PatternLimits"/> for limits and meaning.</summary>
public sealed record PinParameters
{
    /// <summary>Diameter of the blade pin.</summary>
    public double PivotDiameterMm { get; init; } = 2.4;

    /// <summary>Diameter of the centre pin.</summary>
    public double CentreDiameterMm { get; init; } = 1.6;

    /// <summary>Diameter of the rear pin.</summary>
    public double RearDiameterMm { get; init; } = 1.6;

    /// <summary>Distance of the centre pin behind the pivot, along the handle.</summary>
    public double? CentreBehindMm { get; init; }

    /// <summary>Distance of the rear pin behind the pivot, along the handle.</summary>
    public double? RearBehindMm { get; init; }

    /// <summary>Depth of the centre pin's middle under the handle's line.</summary>
    public double? CentreDepthMm { get; init; }

    /// <summary>Depth of the rear pin's middle under the handle's line.</summary>
    public double? RearDepthMm { get; init; }

    /// <summary>Least metal to be left around a pin.</summary>
    public double WallMm { get; init; } = 0.8;
}
