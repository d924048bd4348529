namespace Flushback.Mechanism.Tolerances;

/// <summary>What a part is read for.</summary>
public enum Outcome
{
    /// <summary>Height of the spring's back open, at the dial, against the drawing; millimetres. There the dial is set to zero.</summary>
    OpenHeight,

    /// <summary>Dial at the half stop, zeroed open; millimetres.</summary>
    HalfStopLift,

    /// <summary>Dial closed, zeroed open; millimetres.</summary>
    ClosedLift,

    /// <summary>Blade angle at which it rests open; radians.</summary>
    OpenAngle,

    /// <summary>Blade angle at which it rests at the half stop; radians.</summary>
    HalfStopAngle,

    /// <summary>Blade angle at which it rests closed; radians.</summary>
    ClosedAngle,

    /// <summary>Depth of the tip in the handle, closed; millimetres.</summary>
    TipDepth,

    /// <summary>Greatest pull at the nail nick; newtons.</summary>
    Pull,

    /// <summary>Greatest bending stress of the spring; MPa.</summary>
    PeakStress,
}

/// <summary>What belongs together.</summary>
public static class Outcomes
{
    /// <summary>All that the bench tells, in order.</summary>
    public static IReadOnlyList<Outcome> OfBench { get; } =
    [
        Outcome.OpenHeight,
        Outcome.HalfStopLift,
        Outcome.ClosedLift,
        Outcome.OpenAngle,
        Outcome.HalfStopAngle,
        Outcome.ClosedAngle,
        Outcome.TipDepth,
    ];

    /// <summary>What the handle adds.</summary>
    public static IReadOnlyList<Outcome> OfHandle { get; } = [Outcome.Pull, Outcome.PeakStress];

    /// <summary>The readings of the dial, in the order of the stops.</summary>
    public static IReadOnlyList<Outcome> Readings { get; } =
    [Outcome.OpenHeight, Outcome.HalfStopLift, Outcome.ClosedLift];

    /// <summary>True for a blade angle.</summary>
    public static bool IsAngle(this Outcome outcome) =>
        outcome is Outcome.OpenAngle or Outcome.HalfStopAngle or Outcome.ClosedAngle;
}
