using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Handle.Solving;

namespace Flushback.Mechanism.Handle;

/// <summary>Sweeps a spring in the handle from the open rest to the closed one.</summary>
internal sealed class HandleSweep
{
    private readonly HandleModel _model;
    private readonly double _zeroMm;

    public HandleSweep(HandleModel model, Angle step, CancellationToken cancellation = default)
    {
        _model = model;
        Open = model.Rests.Open();
        Closed = model.Rests.Near(Angle.FromDegrees(180));
        _zeroMm = model.DialRiseMm(Open.State.Pose);
        States = StatesBetween(Open.State, Closed.State, step, cancellation);
        Worst = States.MaxBy(state => model.Stress.Peak(state.Load).StressMpa);
        Pull = GreatestPull();
    }

    public HandleRest Open { get; }

    public HandleRest Closed { get; }

    /// <summary>From open to closed, both rests included.</summary>
    public ImmutableArray<NoseState> States { get; }

    /// <summary>Where the bending stress is greatest.</summary>
    public NoseState Worst { get; }

    public NailPull Pull { get; }

    public double PeakStressMpa => _model.Stress.Peak(Worst.Load).StressMpa;

    /// <summary>Lift in the handle from the open rest.</summary>
    public double LiftMm(in NoseState state) => _model.DialRiseMm(state.Pose) - _zeroMm;

    /// <summary>Lift on the bench from its own open rest.</summary>
    public double BenchLiftMm(Angle bladeAngle)
    {
        BenchGround ground = _model.Ground;

        // Past the bench's own open rest no rigid pose is left; there the rest itself is the nearest reading.
        SpringPose pose = ground.Track.At(bladeAngle);
        return pose.IsPossible ? ground.Knife.LiftMm(ground.Open.Lowest, pose.Lowest) : 0;
    }

    /// <summary>Greatest difference between the lift in the handle and on the bench.</summary>
    public double GreatestLiftDifferenceMm => States.Max(s => Math.Abs(LiftMm(s) - BenchLiftMm(s.BladeAngle)));

    public double FrictionNmm(in NoseState state) =>
        state.FrictionTorqueNmm(_model.Settings.Friction, _model.Ground.Knife.PivotRadiusMm);

    public HandleSample Sample(NoseState state)
    {
        double friction = FrictionNmm(state);
        return new HandleSample(
            state.BladeAngle,
            LiftMm(state),
            BenchLiftMm(state.BladeAngle),
            state.EnergyNmm,
            state.TorqueNmm,
            state.TorqueNmm + friction,
            friction - state.TorqueNmm,
            state.GreatestForceN,
            _model.Stress.Peak(state.Load).StressMpa
        );
    }

    /// <summary>Greatest torque of the spring alone towards a stop, and how far before it the spring drives the blade.</summary>
    public (double SnapNmm, Angle TakesOver) TowardsStop(Angle rest, bool isOpen)
    {
        // Towards open the blade angle falls; towards the others it grows from the energy's last peak.
        double sign = isOpen ? 1 : -1;
        IEnumerable<NoseState> coming = isOpen
            ? States.Where(s => s.BladeAngle > rest)
            : States.Where(s => s.BladeAngle < rest).Reverse();
        double snap = 0;
        Angle takesOver = Angle.Zero;
        bool drives = true;
        foreach (NoseState state in coming)
        {
            double towards = sign * state.TorqueNmm;
            if (towards <= 0 && snap > 0)
            {
                break;
            }

            snap = Math.Max(snap, towards);
            drives &= towards > FrictionNmm(state) || snap == 0;
            takesOver = drives && snap > 0 ? new Angle(Math.Abs((state.BladeAngle - rest).Radians)) : takesOver;
        }

        return (snap, takesOver);
    }

    private NailPull GreatestPull()
    {
        double nick = _model.NailNickMm;
        NailPull pull = new(nick, 0, 0, Closed.State.BladeAngle);
        foreach (NoseState state in States.Reverse())
        {
            // As far as the first peak: from there on the spring helps, or the half stop has been reached.
            if (state.TorqueNmm > 0 && pull.WithoutFrictionN > 0)
            {
                break;
            }

            double with = (FrictionNmm(state) - state.TorqueNmm) / nick;
            pull = pull with { WithoutFrictionN = Math.Max(pull.WithoutFrictionN, -state.TorqueNmm / nick) };
            if (with > pull.PullN)
            {
                pull = pull with { PullN = with, BladeAngle = state.BladeAngle };
            }
        }

        return pull;
    }

    private ImmutableArray<NoseState> StatesBetween(
        NoseState from,
        NoseState to,
        Angle step,
        CancellationToken cancellation
    )
    {
        ImmutableArray<NoseState>.Builder states = ImmutableArray.CreateBuilder<NoseState>();
        states.Add(from);
        NoseState last = from;
        for (int i = (int)Math.Ceiling(from.BladeAngle.Radians / step.Radians); (step * i) < to.BladeAngle; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            if ((step * i) > from.BladeAngle)
            {
                NoseState state = _model.Track.At(step * i);
                if (state.IsPossible)
                {
                    states.Add(last = state);
                }
            }
        }

        if (to.BladeAngle > last.BladeAngle)
        {
            states.Add(to);
        }

        return states.ToImmutable();
    }
}
