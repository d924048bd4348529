using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Handle.Suggestions;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Materials;

namespace Flushback.Mechanism.Handle;

/// <summary>What the knife does in the handle. Points in the knife frame. Estimates, not a certification.</summary>
public sealed record HandleReport
{
    /// <summary>The settings it was computed with.</summary>
    public required HandleSettings Settings { get; init; }

    /// <summary>What was assumed and found about the spring as a beam.</summary>
    public required SpringFigures Spring { get; init; }

    /// <summary>The stops the knife has, in the order open, half stop, closed.</summary>
    public required ImmutableArray<HandleStop> Stops { get; init; }

    /// <summary>From the open rest to the closed one.</summary>
    public required ImmutableArray<HandleSample> Curve { get; init; }

    /// <summary>What the hand feels at the nail nick, opening from closed.</summary>
    public required NailPull Pull { get; init; }

    /// <summary>Bending stress along the spring where the peak is greatest.</summary>
    public required ImmutableArray<StressPoint> StressAlong { get; init; }

    /// <summary>The stress against the steel.</summary>
    public required StrengthVerdict Strength { get; init; }

    /// <summary>What pull, stress and lift owe to what a maker can change.</summary>
    public required ImmutableArray<Sensitivity> Sensitivities { get; init; }

    /// <summary>What gives the wanted pull, when one was asked for.</summary>
    public Suggestion? Suggestion { get; init; }

    /// <summary>What to look at, worst first.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }
}

/// <summary>The spring as a beam.</summary>
/// <param name="PreloadMm">How far the nose would sink over the pivot from where it lies open on the bench.</param>
/// <param name="StiffNoseMm">How far behind the pivot the stiff nose begins.</param>
/// <param name="OverhangMm">From the centre pin to there.</param>
/// <param name="SpanMm">Between the pins.</param>
/// <param name="StiffnessNPerMm">Force over the pivot for a millimetre of lift there.</param>
/// <param name="ModulusMpa">Modulus used; forces and stresses are linear in it.</param>
public readonly record struct SpringFigures(
    double PreloadMm,
    double StiffNoseMm,
    double OverhangMm,
    double SpanMm,
    double StiffnessNPerMm,
    double ModulusMpa
);

/// <summary>The knife at rest in the handle.</summary>
/// <param name="Stop">Which stop.</param>
/// <param name="Rests">True when the blade comes to rest there.</param>
/// <param name="RestAngle">Where.</param>
/// <param name="LiftMm">Travel of the dial point from open in the handle.</param>
/// <param name="BenchLiftMm">What the dial reads on the bench.</param>
/// <param name="PeakStressMpa">Greatest bending stress.</param>
/// <param name="Contacts">Which contacts share the load.</param>
/// <param name="SnapNmm">Greatest torque of the spring alone towards this stop on the way to it, from closed or open.</param>
/// <param name="TakesOver">How far before the stop the spring drives the blade against friction; zero if it never does.</param>
public sealed record HandleStop(
    Stop Stop,
    bool Rests,
    Angle RestAngle,
    double LiftMm,
    double BenchLiftMm,
    double PeakStressMpa,
    ImmutableArray<HandleContact> Contacts,
    double SnapNmm,
    Angle TakesOver
);

/// <summary>A loaded contact.</summary>
/// <param name="At">Where, knife frame.</param>
/// <param name="Normal">Unit normal from the tang to the spring.</param>
/// <param name="ForceN">Force, in newtons.</param>
/// <param name="BladeFace">Face or corner of the blade.</param>
/// <param name="SpringFace">Face or corner of the spring.</param>
/// <param name="PressureMpa">Greatest Hertzian pressure of the line contact; null where a corner is drawn sharp.</param>
/// <param name="YieldPressureMpa">Pressure at which the softer of the two begins to yield below its surface; null if not known.</param>
public readonly record struct HandleContact(
    Point At,
    Vector Normal,
    double ForceN,
    BladeFace BladeFace,
    SpringFace SpringFace,
    double? PressureMpa,
    double? YieldPressureMpa
);

/// <summary>One blade angle in the handle.</summary>
/// <param name="BladeAngle">Blade angle.</param>
/// <param name="LiftMm">Travel of the dial point from open, in the handle.</param>
/// <param name="BenchLiftMm">The same on the bench.</param>
/// <param name="EnergyNmm">Strain energy, N mm.</param>
/// <param name="TorqueNmm">Torque that turns the blade towards closed without friction, N mm; negative where the spring drives it.</param>
/// <param name="ClosingTorqueNmm">The same with friction, blade moving towards closed.</param>
/// <param name="OpeningTorqueNmm">Torque that turns the blade towards open with friction, positive towards open.</param>
/// <param name="ForceN">Greatest contact force.</param>
/// <param name="PeakStressMpa">Greatest bending stress in the spring.</param>
public readonly record struct HandleSample(
    Angle BladeAngle,
    double LiftMm,
    double BenchLiftMm,
    double EnergyNmm,
    double TorqueNmm,
    double ClosingTorqueNmm,
    double OpeningTorqueNmm,
    double ForceN,
    double PeakStressMpa
);

/// <summary>The pull at the nail nick, square to the blade, opening from closed.</summary>
/// <param name="NailNickMm">Distance of the nick from the pivot.</param>
/// <param name="PullN">Greatest pull with friction.</param>
/// <param name="WithoutFrictionN">Greatest pull without.</param>
/// <param name="BladeAngle">Where it is greatest, with friction.</param>
public readonly record struct NailPull(double NailNickMm, double PullN, double WithoutFrictionN, Angle BladeAngle);

/// <summary>Bending stress at a place along the spring.</summary>
/// <param name="XMm">Along the handle, knife frame, spring as drawn.</param>
/// <param name="OpenMpa">At the open rest.</param>
/// <param name="PeakMpa">Where in the rotation the peak is greatest.</param>
public readonly record struct StressPoint(double XMm, double OpenMpa, double PeakMpa);

/// <summary>Whether a spring lasts.</summary>
public enum SpringLife
{
    /// <summary>The steel's strength at this hardness is not known.</summary>
    Unknown,

    /// <summary>Stress within what springs bear without end.</summary>
    Endless,

    /// <summary>Stress within what springs bear a thousand to a million times.</summary>
    Limited,

    /// <summary>Stress within what a spring bears at rest, not in use.</summary>
    Short,

    /// <summary>The spring takes a set.</summary>
    TakesSet,
}

/// <summary>Peak stress against the steel.</summary>
/// <param name="PeakStressMpa">Greatest bending stress over the rotation, by the net section, without stress raisers.</param>
/// <param name="AtXMm">Where along the spring.</param>
/// <param name="BladeAngle">At which blade angle.</param>
/// <param name="TensileMpa">Tensile strength estimated from the hardness; null when not known.</param>
/// <param name="Life">The verdict, by shares of the lower tensile strength.</param>
/// <param name="GerberMargin">
/// How many times the mean stress may grow while the alternating part stays (a horizontal load line, since the cam fixes
/// the alternating part), by Gerber's parabola; null when not known, 0 when the alternating part alone is too much.
/// </param>
/// <param name="YieldMargin">The same against first yield.</param>
public sealed record StrengthVerdict(
    double PeakStressMpa,
    double AtXMm,
    Angle BladeAngle,
    ValueRange? TensileMpa,
    SpringLife Life,
    double? GerberMargin,
    double? YieldMargin
);

/// <summary>What a maker can change.</summary>
public enum Dimension
{
    /// <summary>Depth of the spring all along, added at its back.</summary>
    SpringDepth,

    /// <summary>Width of the spring.</summary>
    SpringWidth,

    /// <summary>Preload, as the sink of the nose.</summary>
    Preload,

    /// <summary>The centre pin, moved forward.</summary>
    CentrePinForward,

    /// <summary>Where the stiff nose is taken to begin, moved to the rear: an assumption, not a dimension.</summary>
    StiffNose,
}

/// <summary>Change for one millimetre more of a dimension, everything else as it is.</summary>
/// <param name="Of">Which dimension.</param>
/// <param name="PullNPerMm">Of the pull at the nail nick.</param>
/// <param name="StressMpaPerMm">Of the peak stress.</param>
/// <param name="LiftPerMm">Of the greatest difference between the lift in the handle and on the bench.</param>
public readonly record struct Sensitivity(Dimension Of, double PullNPerMm, double StressMpaPerMm, double LiftPerMm);
