using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Mechanism.Bench;

/// <summary>The dial at the stops of a knife, without the rotation between them.</summary>
/// <param name="Stops">In the order open, half stop, closed; without the half stop where the knife has none.</param>
/// <param name="OpenRotation">Spring rotation at which the dial is zeroed.</param>
/// <param name="HasHalfStop">True when the tang has a half stop.</param>
public sealed record StopReadings(ImmutableArray<StopReading> Stops, Angle OpenRotation, bool HasHalfStop)
{
    /// <summary>The reading of one stop, or null when the knife has none there.</summary>
    public StopReading? At(Stop stop) => Stops.FirstOrDefault(reading => reading.Stop == stop);
}
