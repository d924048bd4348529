using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench;

/// <summary>Reads lift, clearances and carrying faces over the rotation.</summary>
internal sealed class LiftSweep(BenchSolver solver, RotationTrack track, FaceNaming faces, ClearanceMeter clearances)
{
    /// <summary>Samples from the first rest to the last, at every step and at each rest exactly.</summary>
    public LiftCurve Run(Angle zero, IReadOnlyList<SpringPose> rests, Angle step, CancellationToken cancellation)
    {
        ImmutableArray<LiftSample>.Builder samples = ImmutableArray.CreateBuilder<LiftSample>();
        List<SpringPose> poses = [];
        Angle from = rests[0].BladeAngle;
        Angle to = rests[^1].BladeAngle;
        int nextRest = 0;
        for (int i = (int)Math.Ceiling(from.Radians / step.Radians); nextRest < rests.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            Angle angle = step * i;
            while (nextRest < rests.Count && rests[nextRest].BladeAngle <= angle)
            {
                poses.Add(rests[nextRest]);
                nextRest++;
            }

            if (angle > from && angle < to && angle != poses[^1].BladeAngle)
            {
                SpringPose pose = track.At(angle);
                if (pose.IsPossible)
                {
                    poses.Add(pose);
                }
            }
        }

        foreach (SpringPose pose in poses)
        {
            cancellation.ThrowIfCancellationRequested();
            samples.Add(SampleAt(zero, pose));
        }

        return new LiftCurve(samples.ToImmutable(), Intervals(poses));
    }

    private LiftSample SampleAt(Angle zero, SpringPose pose)
    {
        Vector arm = solver.Knife.DialPoint - solver.Knife.CentrePin.Centre;
        (BladeFace blade, SpringFace spring) = FacesOf(pose);
        BladeClearance clearance = clearances.At(pose.BladeAngle, pose.Lowest);
        return new LiftSample(
            pose.BladeAngle,
            pose.Lowest,
            solver.Knife.LiftMm(zero, pose.Lowest),
            pose.Slope * arm.Rotated(pose.Lowest).X,
            blade,
            spring,
            clearance.Edge.DistanceMm,
            clearance.Tip.DistanceMm,
            clearance.Tail.DistanceMm,
            clearances.TipDepthMm(pose.BladeAngle)
        );
    }

    private (BladeFace Blade, SpringFace Spring) FacesOf(SpringPose pose) =>
        (
            faces.BladeFaceOf(pose.Support.BladeEdge, pose.Support.BladeVertex),
            faces.SpringFaceOf(pose.Support.SpringEdge, pose.Support.SpringVertex)
        );

    private ImmutableArray<CarriedInterval> Intervals(List<SpringPose> poses)
    {
        ImmutableArray<CarriedInterval>.Builder intervals = ImmutableArray.CreateBuilder<CarriedInterval>();
        Angle from = poses[0].BladeAngle;
        for (int i = 1; i < poses.Count; i++)
        {
            (BladeFace Blade, SpringFace Spring) before = FacesOf(poses[i - 1]);
            if (FacesOf(poses[i]) != before)
            {
                Angle change = ChangeBetween(poses[i - 1], poses[i], before);
                intervals.Add(new CarriedInterval(from, change, before.Blade, before.Spring));
                from = change;
            }
        }

        (BladeFace Blade, SpringFace Spring) last = FacesOf(poses[^1]);
        intervals.Add(new CarriedInterval(from, poses[^1].BladeAngle, last.Blade, last.Spring));
        return [.. intervals.Where(interval => interval.To > interval.From)];
    }

    private Angle ChangeBetween(SpringPose before, SpringPose after, (BladeFace, SpringFace) carried) =>
        PoseBoundary.Between(solver, before, after, pose => FacesOf(pose) == carried).Fails.BladeAngle;
}
