using Flushback.Geometry;

namespace Flushback.Mechanism.Measured;

/// <summary>What the dial showed on the bench with the steel itself. Immutable; what was not read is left out.</summary>
public sealed record MeasuredReadings
{
    /// <summary>Reading at the half stop with the dial zeroed open, in millimetres; positive is proud.</summary>
    public double? HalfStopMm { get; init; }

    /// <summary>Reading closed with the dial zeroed open, in millimetres; positive is proud.</summary>
    public double? ClosedMm { get; init; }

    /// <summary>
    /// How far the spring's back stands open above where the drawing has it, against the line of the handle, at the dial
    /// and in millimetres.
    /// </summary>
    public double? OpenHeightMm { get; init; }

    /// <summary>Blade angle at which the blade rested at the half stop, about 90 degrees.</summary>
    public Angle? HalfStopRestAngle { get; init; }

    /// <summary>Blade angle at which the blade rested closed, about 180 degrees.</summary>
    public Angle? ClosedRestAngle { get; init; }
}
