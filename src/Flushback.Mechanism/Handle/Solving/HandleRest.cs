using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;

namespace Flushback.Mechanism.Handle.Solving;

/// <summary>Where the blade comes to rest in the handle, without friction.</summary>
/// <param name="State">The state there; at the nominal angle, or the nearest one followed, where the blade does not rest.</param>
/// <param name="Rests">True when the energy falls towards this angle from both sides.</param>
/// <param name="Contacts">All contacts that share the load at rest, their forces such that the blade feels no torque.</param>
public sealed record HandleRest(NoseState State, bool Rests, ImmutableArray<NoseContact> Contacts);

/// <summary>Finds the stops in the handle: the minima of the strain energy near open, half stop and closed.</summary>
/// <remarks>
/// The slope of the energy is the torque, known exactly from the contact forces, so halving the blade angle on its sign
/// finds kinks and smooth minima alike.
/// </remarks>
public sealed class HandleRestFinder(NoseSolver solver, NoseTrack track)
{
    // A torque below this is rounding: an arc about the pivot lets the blade stay anywhere.
    private const double LevelNmm = 1e-7;

    // Nearer to a rest than this all of its contacts are within what the bow is known to.
    private static readonly Angle _finest = new(1e-11);

    // Two contacts closer than this are one, seen from both sides of the rest.
    private const double OnePlaceMm = 1e-6;

    /// <summary>
    /// Where the open blade rests: coming from mid-swing, the angle at which seat and shoulder hold it in balance.
    /// </summary>
    public HandleRest Open()
    {
        NoseState? last = null;
        HandleRest? best = null;
        foreach (NoseState state in track.States.Reverse().Where(s => s.BladeAngle <= RotationTrack.MidSwing))
        {
            if (last is { } above && above.BladeAngle < StopFinder.Window && IsRising(above) && !IsRising(state))
            {
                HandleRest rest = Between(above, state, IsRising);
                best = best is null || IsNearer(rest, best, Angle.Zero) ? rest : best;
            }

            last = state;
        }

        return best ?? NoRest(Angle.Zero);
    }

    /// <summary>The minimum of the energy nearest to a nominal blade angle, if there is one within the window.</summary>
    /// <param name="nominal">90 degrees for the half stop, 180 for closed.</param>
    public HandleRest Near(Angle nominal)
    {
        HandleRest? best = null;
        for (int i = 1; i < track.States.Count; i++)
        {
            NoseState before = track.States[i - 1];
            NoseState after = track.States[i];
            bool isInWindow = Math.Abs((before.BladeAngle - nominal).Radians) <= StopFinder.Window.Radians;
            if (isInWindow && IsFalling(before) && !IsFalling(after))
            {
                // Where nothing fits at the next angle the blade may still come to rest in the last fraction of the step.
                HandleRest rest = Between(before, after, IsFalling);
                best = rest.Rests && (best is null || IsNearer(rest, best, nominal)) ? rest : best;
            }
        }

        return best ?? NoRest(nominal);
    }

    /// <summary>Highest points of the energy strictly between two blade angles, in order.</summary>
    public IEnumerable<NoseState> PeaksBetween(Angle from, Angle to)
    {
        for (int i = 1; i < track.States.Count; i++)
        {
            NoseState before = track.States[i - 1];
            NoseState after = track.States[i];
            bool isInside = before.BladeAngle >= from && after.BladeAngle <= to;
            if (isInside && IsRising(before) && after.IsPossible && !IsRising(after))
            {
                yield return Boundary(before, after, IsRising).Holds;
            }
        }
    }

    private static bool IsRising(NoseState state) => state.IsPossible && state.TorqueNmm > LevelNmm;

    private static bool IsFalling(NoseState state) => state.IsPossible && state.TorqueNmm < -LevelNmm;

    private static bool IsNearer(HandleRest rest, HandleRest than, Angle nominal) =>
        Math.Abs((rest.State.BladeAngle - nominal).Radians) < Math.Abs((than.State.BladeAngle - nominal).Radians);

    private HandleRest NoRest(Angle nominal)
    {
        // Beyond what was followed there may be poses too, but none that the blade comes to.
        NoseState nearest = track.NearestTo(nominal);
        bool isFollowed = Math.Abs((nearest.BladeAngle - nominal).Radians) < NoseTrack.Step.Radians;
        NoseState state = isFollowed ? track.At(nominal) : nearest;
        return new HandleRest(state.IsPossible ? state : nearest, Rests: false, []);
    }

    private HandleRest Between(NoseState holds, NoseState fails, Func<NoseState, bool> condition)
    {
        (NoseState near, NoseState far) = Boundary(holds, fails, condition);
        if (!far.IsPossible || far.TorqueNmm == near.TorqueNmm)
        {
            return new HandleRest(near, Rests: far.IsPossible, Contacts(near, default, 1));
        }

        // Just beyond the rest the torque turns round. Where contacts change there, both sets share the load at rest, in
        // the one proportion that leaves no torque; where the torque is smooth both sets are the same.
        double share = Math.Clamp(far.TorqueNmm / (far.TorqueNmm - near.TorqueNmm), 0, 1);
        return new HandleRest(near, Rests: true, Contacts(near, far, share));
    }

    private static ImmutableArray<NoseContact> Contacts(in NoseState near, in NoseState far, double share)
    {
        List<NoseContact> contacts = [];
        Add(near.First, share);
        Add(near.Second, share);
        Add(far.First, 1 - share);
        Add(far.Second, 1 - share);
        contacts.RemoveAll(contact => contact.ForceN == 0);
        contacts.Sort((a, b) => a.Feature.At.X.CompareTo(b.Feature.At.X));
        return [.. contacts];

        void Add(NoseContact contact, double part)
        {
            NoseContact scaled = contact with { ForceN = contact.ForceN * part };
            int same = contacts.FindIndex(other => other.Feature.At.IsWithin(OnePlaceMm, scaled.Feature.At));
            if (same >= 0)
            {
                contacts[same] = contacts[same] with { ForceN = contacts[same].ForceN + scaled.ForceN };
            }
            else
            {
                contacts.Add(scaled);
            }
        }
    }

    private (NoseState Holds, NoseState Fails) Boundary(
        NoseState holds,
        NoseState fails,
        Func<NoseState, bool> condition
    ) =>
        Halving.Between(
            holds,
            fails,
            static state => state.BladeAngle,
            (angle, near) => solver.At(angle, near.Pose),
            condition,
            _finest
        );
}
