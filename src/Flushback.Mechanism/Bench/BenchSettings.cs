using Flushback.Geometry;

namespace Flushback.Mechanism.Bench;

/// <summary>What a reading should be: a lift and half the width of the window about it, in millimetres.</summary>
public readonly record struct StopTarget(double LiftMm, double ToleranceMm);

/// <summary>Targets for the three stops.</summary>
/// <param name="Open">At open; the dial is zeroed there, so only the sign of the others is told against it.</param>
/// <param name="HalfStop">At the half stop.</param>
/// <param name="Closed">When closed.</param>
public sealed record StopTargets(StopTarget Open, StopTarget HalfStop, StopTarget Closed)
{
    /// <summary>Millimetres in a thousandth of an inch; the inch is 25.4 mm by definition.</summary>
    public const double MmPerThou = 0.0254;

    /// <summary>A pair still to be fitted: open 0, half stop +0.005 in, closed +0.015 in, each within 0.002 in.</summary>
    /// <remarks>Common practice, no source; the width of the window is ours.</remarks>
    public static StopTargets BeforeFitting { get; } =
        new(
            new StopTarget(0, 2 * MmPerThou),
            new StopTarget(5 * MmPerThou, 2 * MmPerThou),
            new StopTarget(15 * MmPerThou, 2 * MmPerThou)
        );

    /// <summary>A finished pair: flush at all three, each within 0.001 in.</summary>
    /// <remarks>Common practice, no source; the width of the window is ours.</remarks>
    public static StopTargets Finished { get; } =
        new(new StopTarget(0, MmPerThou), new StopTarget(0, MmPerThou), new StopTarget(0, MmPerThou));

    /// <summary>The target of one stop.</summary>
    public StopTarget For(Stop stop) =>
        stop switch
        {
            Stop.Open => Open,
            Stop.HalfStop => HalfStop,
            _ => Closed,
        };
}

/// <summary>Targets, tolerances and resolution of a bench check. Immutable; every default is stated.</summary>
public sealed record BenchSettings
{
    /// <summary>What the dial should read.</summary>
    /// <value>Default: <see cref="StopTargets.BeforeFitting"/>.</value>
    public StopTargets Targets { get; init; } = StopTargets.BeforeFitting;

    /// <summary>Step of the lift curve.</summary>
    /// <value>Default: half a degree of blade angle.</value>
    public Angle Step { get; init; } = Angle.FromDegrees(0.5);

    /// <summary>Pairs of features closer than this count as touching at a stop.</summary>
    /// <value>Default: 0.002 mm, below what a dial shows and above what rounding leaves.</value>
    public double ContactToleranceMm { get; init; } = 0.002;

    /// <summary>Least wanted distance between the outer contacts of a stop.</summary>
    /// <value>Default: 2 mm; common practice asks for "well apart", the number is ours.</value>
    public double LeastContactSpreadMm { get; init; } = 2;

    /// <summary>A contact along more than this length is a face contact.</summary>
    /// <value>Default: 1 mm, longer than the land a relief leaves at either end of a face.</value>
    public double FaceContactLengthMm { get; init; } = 1;

    /// <summary>Least wanted gap between the notch's inner corner and the nose when open.</summary>
    /// <value>Default: 0.1 mm.</value>
    public double LeastCornerGapMm { get; init; } = 0.1;

    /// <summary>Least wanted gap between edge and spring when closed.</summary>
    /// <value>Default: 0.3 mm.</value>
    public double LeastEdgeClearanceMm { get; init; } = 0.3;

    /// <summary>Least wanted depth of the tip inside the handle when closed.</summary>
    /// <value>Default: 0.5 mm.</value>
    public double LeastTipDepthMm { get; init; } = 0.5;

    /// <summary>How far a stop may rest from its nominal blade angle.</summary>
    /// <value>Default: 2 degrees.</value>
    public Angle RestAngleTolerance { get; init; } = Angle.FromDegrees(2);
}
