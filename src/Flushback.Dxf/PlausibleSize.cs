namespace Flushback.Dxf;

/// <summary>Sizes that a thing of some kind can have, in millimetres.</summary>
/// <param name="LeastMm">The smallest.</param>
/// <param name="MostMm">The largest.</param>
public readonly record struct PlausibleSize(double LeastMm, double MostMm)
{
    /// <summary>True for a size in the range, its ends included.</summary>
    public bool Holds(double mm) => mm >= LeastMm && mm <= MostMm;
}
