using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances.Drawing;

namespace Flushback.Mechanism.Tolerances.Solving;

/// <summary>A part brought to its three stops by the solver of the bench.</summary>
internal sealed class PartSolver
{
    private static readonly Angle _quarterTurn = Angle.FromDegrees(90);
    private static readonly Angle _halfTurn = Angle.FromDegrees(180);

    private PartSolver(DrawnPart part, BenchSolver solver, bool hasHalfStop, CancellationToken cancellation)
    {
        Part = part;
        Solver = solver;
        Track = RotationTrack.Follow(solver, cancellation);
        StopFinder stops = new(solver, Track);
        Open = stops.Open();
        HalfStop = hasHalfStop ? stops.Near(_quarterTurn, StopFinder.LeastHalfStopDepthMm) : null;
        Closed = stops.Near(_halfTurn, leastDepthMm: 0);
    }

    public DrawnPart Part { get; }

    public BenchSolver Solver { get; }

    public RotationTrack Track { get; }

    public RestPose Open { get; }

    public RestPose? HalfStop { get; }

    public RestPose Closed { get; }

    /// <summary>Height of the spring's back at the dial, open, in the frame of the handle.</summary>
    public double OpenHeightMm
    {
        get
        {
            Knife knife = Part.Knife;
            Point pin = knife.CentrePin.Centre;
            return pin.Y + (knife.DialPoint - pin).Rotated(Open.Pose.Lowest).Y - Part.Motion.DropMm;
        }
    }

    /// <summary>Solves a part; null when blade and spring do not go together at mid-swing.</summary>
    public static PartSolver? Solve(DrawnPart part, bool hasHalfStop, CancellationToken cancellation)
    {
        BenchSolver solver = new(part.Knife, cancellation);
        return solver.PoseAt(RotationTrack.MidSwing).IsPossible
            ? new PartSolver(part, solver, hasHalfStop, cancellation)
            : null;
    }

    /// <summary>What it reads.</summary>
    /// <param name="tip">Tip of the blade as drawn, of which no profile varies.</param>
    /// <param name="openHeightMm">Height of the back of the knife as drawn, open.</param>
    public PartReading Read(Point tip, double openHeightMm)
    {
        Knife knife = Part.Knife;
        Angle zero = Open.Pose.Lowest;
        return new PartReading(
            IsAssembled: true,
            new PartStop(Open.Rests, OpenHeightMm - openHeightMm, Open.Pose.BladeAngle),
            HalfStop is { } half ? StopOf(half) : null,
            StopOf(Closed),
            knife.Handle?.SignedDistanceMm(TipAt(tip))
        );

        PartStop StopOf(RestPose rest) => new(rest.Rests, knife.LiftMm(zero, rest.Pose.Lowest), rest.Pose.BladeAngle);
    }

    /// <summary>The tip, closed, in the frame of the handle.</summary>
    public Point TipAt(Point tip) =>
        Knife.BladeAt(Closed.Pose.BladeAngle).Apply(tip + Part.Motion.BladeShift) - new Vector(0, Part.Motion.DropMm);
}
