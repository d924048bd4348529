using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Measured;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans;

/// <summary>What a plan is to reach, and what it may take. Immutable; every default is stated.</summary>
public sealed record PlanSettings
{
    /// <summary>What the dial should read; a stop inside its window that nothing else moves out of it is left alone.</summary>
    /// <value>Default: <see cref="StopTargets.BeforeFitting"/>.</value>
    public StopTargets Targets { get; init; } = StopTargets.BeforeFitting;

    /// <summary>Metal left for fitting: half stop and closed are to read this much above their targets, in millimetres.</summary>
    /// <value>Default: 0.</value>
    public double StockKeptMm { get; init; }

    /// <summary>How far half stop and closed may rest from their nominal blade angles.</summary>
    /// <value>Default: 1 degree, ours.</value>
    public Angle RestAngleTolerance { get; init; } = Angle.FromDegrees(1);

    /// <summary>
    /// How far open may rest from its nominal blade angle. A plan turns it by the open flat; where the shoulder holds the blade it
    /// stays.
    /// </summary>
    /// <value>Default: 2 degrees, ours.</value>
    public Angle OpenAngleTolerance { get; init; } = Angle.FromDegrees(2);

    /// <summary>Window for the depth of the tip inside the handle when closed; needs a handle.</summary>
    /// <value>Default: none.</value>
    public LengthWindow? TipDepth { get; init; }

    /// <summary>
    /// Least radius wanted on open corner, closed corner and kick, and on nose corner and rear corner of the spring's pad where
    /// these touch at a stop; 0 leaves them as they are. A kick that is rounder keeps its radius.
    /// </summary>
    /// <value>Default: 0.25 mm, ours.</value>
    public double LeastCornerRadiusMm { get; init; } = 0.25;

    /// <summary>Depth of the relief wanted in half-stop face and closed face where the plan cuts them; 0 for none.</summary>
    /// <value>Default: 0.</value>
    public double ReliefDepthMm { get; init; }

    /// <summary>What a relief leaves of a face at either end.</summary>
    /// <value>Default: 0.8 mm, ours.</value>
    public double ReliefMarginMm { get; init; } = 0.8;

    /// <summary>Most that may come off the open flat, the reference: the spring lies that much lower in the handle.</summary>
    /// <value>Default: 0.25 mm, ours.</value>
    public double MostOffOpenFlatMm { get; init; } = 0.25;

    /// <summary>How many sets of depths are tried on the knife before the search is given up.</summary>
    /// <value>Default: 60, ours; most knives need four to eight.</value>
    public int MostTrials { get; init; } = 60;

    /// <summary>Most that a face may lie off the drawing where a plan starts from what was measured.</summary>
    /// <value>Default: 0.25 mm, ours.</value>
    public double MostMeasuredOffsetMm { get; init; } = MeasuredKnife.UsualMostOffsetMm;

    /// <summary>How the bench is read and what has to be left; targets are taken from here, not from there.</summary>
    /// <value>Default: the stops alone, without findings.</value>
    public SimulationSettings Simulation { get; init; } = new() { JudgesFindings = false };

    /// <summary>The windows about what a plan lands on: the targets with the metal kept for fitting above them.</summary>
    public StopTargets Aims =>
        new(
            Targets.Open,
            Targets.HalfStop with
            {
                LiftMm = AimMm(Stop.HalfStop),
            },
            Targets.Closed with
            {
                LiftMm = AimMm(Stop.Closed),
            }
        );

    /// <summary>The reading a plan lands on where a stop has to be cut, in millimetres.</summary>
    public double AimMm(Stop stop) => Targets.For(stop).LiftMm + (stop == Stop.Open ? 0 : StockKeptMm);
}

/// <summary>A least and a most, in millimetres.</summary>
public readonly record struct LengthWindow(double LeastMm, double MostMm);
