using Flushback.Geometry;

namespace Flushback.Mechanism.Handle.Solving;

/// <summary>
/// Follows the elastic spring through the rotation from mid-swing, where nothing can trap the nose, to both ends.
/// </summary>
public sealed class NoseTrack
{
    // As on the bench: fine enough that no stop hides between two steps.
    private static readonly Angle _step = Angle.FromDegrees(0.5);

    private readonly NoseSolver _solver;
    private readonly List<NoseState> _states = [];

    private NoseTrack(NoseSolver solver) => _solver = solver;

    /// <summary>The states followed, in order of blade angle, all possible but perhaps the first and the last.</summary>
    public IReadOnlyList<NoseState> States => _states;

    /// <summary>Follows a spring; nothing is tracked when no pose is possible at mid-swing.</summary>
    /// <param name="solver">The spring's solver.</param>
    /// <param name="benchTurn">Turn of the rigid spring on the bench at mid-swing, to start from.</param>
    /// <param name="cancellation">Looked at once a blade angle.</param>
    public static NoseTrack Follow(NoseSolver solver, Angle benchTurn, CancellationToken cancellation = default)
    {
        NoseTrack track = new(solver);
        NoseState middle = solver.At(Bench.Solving.RotationTrack.MidSwing, new NosePose(benchTurn, 0));
        track._states.Add(middle);
        if (!middle.IsPossible)
        {
            return track;
        }

        track.Walk(middle, Bench.Solving.RotationTrack.PastOpen, -1, cancellation);
        track._states.Reverse();
        track.Walk(middle, Bench.Solving.RotationTrack.PastClosed, 1, cancellation);
        return track;
    }

    /// <summary>The state at any blade angle, followed from the nearest one tracked on the side of mid-swing.</summary>
    public NoseState At(Angle bladeAngle)
    {
        bool isBelow = bladeAngle < Bench.Solving.RotationTrack.MidSwing;
        int low = 0;
        int high = _states.Count - 1;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = _states[middle].BladeAngle < bladeAngle ? (middle + 1, high) : (low, middle);
        }

        int from = isBelow || _states[low].BladeAngle <= bladeAngle ? low : Math.Max(0, low - 1);
        while (!_states[from].IsPossible && from > 0 && from < _states.Count - 1)
        {
            from += isBelow ? 1 : -1;
        }

        return _solver.At(bladeAngle, _states[from].Pose);
    }

    private void Walk(NoseState from, Angle to, int direction, CancellationToken cancellation)
    {
        NoseState previous = from;
        for (int i = 1; direction * ((from.BladeAngle + (_step * (i * direction))) - to).Radians <= 1e-9; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            NoseState state = _solver.At(from.BladeAngle + (_step * (i * direction)), previous.Pose);
            _states.Add(state);
            if (!state.IsPossible)
            {
                return;
            }

            previous = state;
        }
    }
}
