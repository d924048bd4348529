namespace Flushback.Inspection.Contours;

/// <summary>What counts as touching and as smooth when contours are inspected.</summary>
internal static class CutTolerances
{
    /// <summary>Contours nearer than a nanometre touch, and what misses a limit by less keeps it: that is rounding.</summary>
    public const double TouchingMm = 1e-6;

    /// <summary>
    /// Edges that meet at less than a degree pass into each other: a cutter of 3 mm leaves a tenth of a micrometre there.
    /// </summary>
    public const double SmoothRad = Math.PI / 180;
}
