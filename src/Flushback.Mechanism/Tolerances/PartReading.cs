using Flushback.Geometry;

namespace Flushback.Mechanism.Tolerances;

/// <summary>A part at one stop.</summary>
/// <param name="Rests">True when the blade comes to rest here by itself.</param>
/// <param name="LiftMm">The dial, zeroed open; open itself the height of the back there against the drawing.</param>
/// <param name="RestAngle">Blade angle at rest.</param>
public readonly record struct PartStop(bool Rests, double LiftMm, Angle RestAngle);

/// <summary>What a part reads on the bench.</summary>
/// <param name="IsAssembled">False when no such part can be drawn, or blade and spring do not go together at mid-swing.</param>
/// <param name="Open">Open.</param>
/// <param name="HalfStop">At the half stop; null when the knife as drawn has none.</param>
/// <param name="Closed">Closed.</param>
/// <param name="TipDepthMm">Depth of the tip in the handle, closed; null without a handle.</param>
public readonly record struct PartReading(
    bool IsAssembled,
    PartStop Open,
    PartStop? HalfStop,
    PartStop Closed,
    double? TipDepthMm
)
{
    /// <summary>True when it is assembled and the blade rests at every stop of the knife.</summary>
    public bool Rests => IsAssembled && Open.Rests && HalfStop is not { Rests: false } && Closed.Rests;

    /// <summary>What it reads; null for what this knife or this part does not have.</summary>
    public double? Of(Outcome outcome) =>
        outcome switch
        {
            _ when !IsAssembled => null,
            Outcome.OpenHeight => At(Open)?.LiftMm,
            Outcome.HalfStopLift => Open.Rests ? At(HalfStop)?.LiftMm : null,
            Outcome.ClosedLift => Open.Rests ? At(Closed)?.LiftMm : null,
            Outcome.OpenAngle => At(Open)?.RestAngle.Radians,
            Outcome.HalfStopAngle => At(HalfStop)?.RestAngle.Radians,
            Outcome.ClosedAngle => At(Closed)?.RestAngle.Radians,
            Outcome.TipDepth => Closed.Rests ? TipDepthMm : null,
            _ => null,
        };

    private static PartStop? At(PartStop? stop) => stop is { Rests: true } ? stop : null;
}
