namespace Flushback.Patterns.Parameters;

/// <summary>Dimensions of the backspring; see <see cref="PatternLimits"/> for limits and meaning.</summary>
public sealed record SpringParameters
{
    /// <summary>Depth at the nose, without stock.</summary>
    public double NoseDepthMm { get; init; } = 3.6;

    /// <summary>Depth at the centre pin, without stock.</summary>
    public double? CentreDepthMm { get; init; }

    /// <summary>Depth at the rear pin, without stock.</summary>
    public double? RearDepthMm { get; init; }

    /// <summary>Angle in the metal between underside and end face.</summary>
    public double EndFaceDeg { get; init; } = 80;

    /// <summary>Radius of the nose's lower corner.</summary>
    public double NoseRadiusMm { get; init; } = 0.2;

    /// <summary>How far behind the pivot the straight underside of the nose ends.</summary>
    public double? PadEndMm { get; init; }

    /// <summary>How deep the belly is hollowed between the nose's underside and the centre pin.</summary>
    public double BellyReliefMm { get; init; } = 0.3;

    /// <summary>Stock on the back over the tang, to be trimmed in fitting.</summary>
    public double FrontStockMm { get; init; } = 0.25;

    /// <summary>Stock on the back behind the centre pin.</summary>
    public double RearStockMm { get; init; } = 0.05;

    /// <summary>How far the nose would sink over the pivot, were the blade taken out.</summary>
    public double? PreloadMm { get; init; }

    /// <summary>Width of the spring, square to the drawing.</summary>
    public double WidthMm { get; init; } = 4;
}
