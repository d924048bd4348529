namespace Flushback.Geometry.Checking;

/// <summary>What counts as equal, touching, too thin or too far when an outline is checked.</summary>
/// <remarks>All in millimetres. Reading a drawing has its own, coarser tolerances, for gaps it may bridge.</remarks>
public sealed record GeometryTolerances
{
    /// <summary>The values below, each as given there.</summary>
    public static GeometryTolerances Default { get; } = new();

    /// <summary>
    /// How near two edges count as touching: a nanometre. Rounding of coordinates at the limit is a hundred thousand times
    /// finer, what a bench dial resolves a thousand times coarser.
    /// </summary>
    /// <value>1e-6 mm.</value>
    public double TouchingMm { get; init; } = 1e-6;

    /// <summary>
    /// The longest distance between two vertices that counts as none. No drawing means an edge as short, and its direction
    /// would be a matter of the decimals written.
    /// </summary>
    /// <value>1e-6 mm.</value>
    public double NoLengthMm { get; init; } = 1e-6;

    /// <summary>
    /// The greatest mean width (area over half the perimeter) of an outline that counts as having no area: thinner than
    /// any foil, so it is a line drawn twice.
    /// </summary>
    /// <value>1e-4 mm.</value>
    public double NoWidthMm { get; init; } = 1e-4;

    /// <summary>
    /// The greatest coordinate, to either side, and half the greatest height of an arc over its chord. A hundred metres
    /// holds every sheet a part is cut from; beyond it a unit is wrong or the drawing is far from its origin, and rounding
    /// grows with it.
    /// </summary>
    /// <value>1e5 mm.</value>
    public double CoordinateLimitMm { get; init; } = 1e5;
}
