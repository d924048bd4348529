using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;

namespace Flushback.Mechanism.Handle.Solving;

/// <summary>
/// Follows the elastic spring through the rotation from mid-swing, where nothing can trap the nose, to both ends.
/// </summary>
public sealed class NoseTrack
{
    // As on the bench: fine enough that no stop hides between two steps.
    internal static readonly Angle Step = Angle.FromDegrees(0.5);

    private readonly NoseSolver _solver;

    internal NoseTrack(NoseSolver solver, IReadOnlyList<NoseState> states)
    {
        _solver = solver;
        States = states;
    }

    /// <summary>The states followed, in order of blade angle, all possible but perhaps the first and the last.</summary>
    public IReadOnlyList<NoseState> States { get; }

    /// <summary>Follows a spring; nothing is tracked when no pose is possible at mid-swing.</summary>
    /// <param name="solver">The spring's solver.</param>
    /// <param name="benchTurn">Turn of the rigid spring on the bench at mid-swing, to start from.</param>
    /// <param name="cancellation">Looked at once a blade angle.</param>
    public static NoseTrack Follow(NoseSolver solver, Angle benchTurn, CancellationToken cancellation = default)
    {
        NoseState middle = solver.At(RotationTrack.MidSwing, new NosePose(benchTurn, 0));
        List<NoseState> states = [middle];
        if (middle.IsPossible)
        {
            Walk(solver, states, RotationTrack.PastOpen, -1, cancellation);
            states.Reverse();
            Walk(solver, states, RotationTrack.PastClosed, 1, cancellation);
        }

        return new NoseTrack(solver, states);
    }

    /// <summary>The state at any blade angle, followed from the nearest one tracked on the side of mid-swing.</summary>
    public NoseState At(Angle bladeAngle)
    {
        bool isBelow = bladeAngle < RotationTrack.MidSwing;
        int low = 0;
        int high = States.Count - 1;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = States[middle].BladeAngle < bladeAngle ? (middle + 1, high) : (low, middle);
        }

        int from = isBelow || States[low].BladeAngle <= bladeAngle ? low : Math.Max(0, low - 1);
        if (!States[from].IsPossible && States.Count > 1)
        {
            from += isBelow ? 1 : -1;
        }

        return _solver.At(bladeAngle, States[from].Pose);
    }

    /// <summary>The possible state followed that is nearest to a blade angle.</summary>
    internal NoseState NearestTo(Angle bladeAngle) =>
        States
            .Where(state => state.IsPossible)
            .DefaultIfEmpty(States[0])
            .MinBy(state => Math.Abs((state.BladeAngle - bladeAngle).Radians));

    /// <summary>Goes on from the last state, step by step, until the end or until nothing fits.</summary>
    private static void Walk(
        NoseSolver solver,
        List<NoseState> states,
        Angle to,
        int direction,
        CancellationToken cancellation
    )
    {
        Angle from = states[^1].BladeAngle;
        for (int i = 1; direction * (from + (Step * (i * direction)) - to).Radians <= 1e-9; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            states.Add(solver.At(from + (Step * (i * direction)), states[^1].Pose));
            if (!states[^1].IsPossible)
            {
                return;
            }
        }
    }
}
