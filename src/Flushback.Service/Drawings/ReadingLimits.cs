using Flushback.Dxf;
using Flushback.Dxf.Reading;
using Flushback.Service.Limits;

namespace Flushback.Service.Drawings;

/// <summary>The service's limits as the reader of drawings takes them.</summary>
internal static class ReadingLimits
{
    /// <summary>How to read a drawing within the limits.</summary>
    /// <param name="limits">How much a request may ask for.</param>
    /// <param name="unit">The caller's unit; null for the file's own.</param>
    public static DxfReadOptions ReadOptions(this ServiceLimits limits, DrawingUnit? unit) =>
        new() { Unit = unit, Limits = limits.ToDxf() };
}
