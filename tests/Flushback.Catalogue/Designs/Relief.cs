namespace Flushback.Catalogue.Designs;

/// <summary>A shallow hollow in the middle of a face, so that only its two ends touch.</summary>
/// <param name="DepthMm">Depth of the hollow in its middle; 0 for a straight face.</param>
/// <param name="LandMm">Straight length left at either end.</param>
public readonly record struct Relief(double DepthMm, double LandMm = 0)
{
    /// <summary>A straight face.</summary>
    public static Relief None => default;
}
