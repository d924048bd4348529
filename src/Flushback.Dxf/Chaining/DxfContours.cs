using Flushback.Dxf.Drawings;

namespace Flushback.Dxf.Chaining;

/// <summary>Joins the loose entities of a layer into closed contours.</summary>
public static class DxfContours
{
    /// <summary>The closed contours and circles of one layer.</summary>
    /// <param name="drawing">A drawing that was read.</param>
    /// <param name="layer">Name of the layer, compared without regard to case.</param>
    /// <param name="joinToleranceMm">How far apart two ends may lie and still be joined, in millimetres.</param>
    /// <remarks>
    /// Entities may lie in any order and direction. Two ends within a nanometre are one point and nothing is said; wider
    /// gaps up to the tolerance are bridged and listed. A layer that is absent, hidden or empty gives no contours and a
    /// notice, not an error: only the caller knows whether it is needed.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is negative or not finite.</exception>
    public static ChainResult ContoursOf(DxfDrawing drawing, string layer, double joinToleranceMm) =>
        throw new NotImplementedException();
}
