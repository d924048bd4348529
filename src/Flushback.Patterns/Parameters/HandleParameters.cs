namespace Flushback.Patterns.Parameters;

/// <summary>Dimensions of the handle; see <see cref="PatternLimits"/> for limits and meaning.</summary>
public sealed record HandleParameters
{
    /// <summary>Length of the handle, from its front end to its butt.</summary>
    public double ClosedLengthMm { get; init; } = 92;

    /// <summary>Length with the blade open, from the butt to the tip.</summary>
    public double? OverallLengthMm { get; init; }

    /// <summary>Distance from the pivot to the handle's front end.</summary>
    public double? FrontMm { get; init; }

    /// <summary>Height of the handle halfway along, from the back to the lower line.</summary>
    public double? HeightMm { get; init; }

    /// <summary>How much higher the handle is at the butt than at the front.</summary>
    public double TaperMm { get; init; } = 1.2;

    /// <summary>Belly of the lower line; negative for a hollow one.</summary>
    public double SwellMm { get; init; } = -0.6;

    /// <summary>How far the back has dropped at the rear pin; 0 for a straight back.</summary>
    public double BackDropMm { get; init; }

    /// <summary>Least depth of the tip inside the handle, blade closed.</summary>
    public double TipDepthMm { get; init; } = 1;

    /// <summary>Room around the closed blade in the well.</summary>
    public double WellClearanceMm { get; init; } = 0.5;
}
