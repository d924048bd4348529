namespace Flushback.Dxf.Chaining;

/// <summary>The distances that chaining goes by, in millimetres.</summary>
/// <param name="JoinMm">Ends no farther apart than this are joined, and the gap is listed.</param>
internal readonly record struct ChainTolerances(double JoinMm)
{
    /// <summary>
    /// Ends no farther apart than a nanometre are one point: that is the rounding of an arc's end computed from its
    /// angle, no gap anyone drew.
    /// </summary>
    public const double CoincidentMm = 1e-6;

    /// <summary>The wider of the two: no pair of ends farther apart than this is ever one point.</summary>
    public double WidestMm => Math.Max(JoinMm, CoincidentMm);

    /// <summary>How far two copies of an edge may differ: less than its own length, or neighbours would be copies.</summary>
    public double CopyMm(double lengthMm) => Math.Min(WidestMm, lengthMm / 4);
}
