using Flushback.Geometry;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>
/// Follows the spring through the rotation by continuity from mid-swing, where nothing can trap the nose, to both ends.
/// </summary>
public sealed class RotationTrack
{
    /// <summary>Where following starts.</summary>
    public static readonly Angle MidSwing = Angle.FromDegrees(45);

    /// <summary>How far past open the blade is followed: no knife opens that far beyond its drawing.</summary>
    public static readonly Angle PastOpen = Angle.FromDegrees(-12);

    /// <summary>How far past closed the blade is followed.</summary>
    public static readonly Angle PastClosed = Angle.FromDegrees(192);

    // Fine enough that no stop hides between two steps, and that a rotation names its neighbour's free interval.
    private static readonly Angle _step = Angle.FromDegrees(0.5);

    // Steps are counted from blade angle zero, as the lift curve counts its own: it then finds its poses solved already.
    private const int StepsToMidSwing = 90;

    private readonly BenchSolver _solver;
    private readonly List<SpringPose> _poses = [];

    private RotationTrack(BenchSolver solver) => _solver = solver;

    /// <summary>The poses followed, in order of blade angle, all possible but perhaps the first and the last.</summary>
    public IReadOnlyList<SpringPose> Poses => _poses;

    /// <summary>Follows a knife.</summary>
    /// <param name="solver">The knife's solver.</param>
    /// <param name="cancellation">Looked at once a blade angle.</param>
    public static RotationTrack Follow(BenchSolver solver, CancellationToken cancellation = default)
    {
        RotationTrack track = new(solver);
        SpringPose middle = solver.PoseAt(MidSwing);
        track.Walk(middle, PastOpen, -1, cancellation);
        track._poses.Reverse();
        track._poses.Add(middle);
        track.Walk(middle, PastClosed, 1, cancellation);
        return track;
    }

    /// <summary>The pose at any blade angle: as tracked, or following from the nearest pose tracked.</summary>
    public SpringPose At(Angle bladeAngle)
    {
        int low = 0;
        int high = _poses.Count - 1;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = _poses[middle].BladeAngle < bladeAngle ? (middle + 1, high) : (low, middle);
        }

        // Follow from the side of mid-swing: the far side may lie past a stop.
        bool below = bladeAngle < MidSwing;
        int from = below ? low : Math.Max(0, _poses[low].BladeAngle > bladeAngle ? low - 1 : low);
        while (!_poses[from].IsPossible && from > 0 && from < _poses.Count - 1)
        {
            from += below ? 1 : -1;
        }

        SpringPose nearest = _poses[from];
        return nearest.BladeAngle == bladeAngle ? nearest : _solver.PoseAt(bladeAngle, nearest.Lowest);
    }

    private void Walk(SpringPose from, Angle to, int direction, CancellationToken cancellation)
    {
        SpringPose previous = from;
        for (int i = StepsToMidSwing + direction; ; i += direction)
        {
            cancellation.ThrowIfCancellationRequested();
            Angle angle = _step * i;
            if (direction * (angle.Radians - to.Radians) > 1e-9)
            {
                return;
            }

            SpringPose pose = _solver.PoseAt(angle, previous.Lowest);
            _poses.Add(pose);
            if (!pose.IsPossible)
            {
                return;
            }

            previous = pose;
        }
    }
}
