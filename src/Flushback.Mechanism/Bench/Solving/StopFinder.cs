using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>Where the blade comes to rest near a stop, and whether it does.</summary>
/// <param name="Pose">The pose there; at the nominal angle, or the last one possible, where the blade does not rest.</param>
/// <param name="Rests">True when the spring falls towards this angle from both sides, or from one up to a hard stop.</param>
public readonly record struct RestPose(SpringPose Pose, bool Rests);

/// <summary>Finds the stops: the open stop, and the minima of the lift near 90 and 180 degrees.</summary>
/// <remarks>
/// At a minimum of the lift the slope changes from falling to rising; the sign of the slope is known exactly from the
/// touching pair, so closing in on where it turns finds kinks and smooth minima alike to the last digit.
/// </remarks>
public sealed class StopFinder(BenchSolver solver, RotationTrack track)
{
    /// <summary>How far from nominal a stop is looked for.</summary>
    public static readonly Angle Window = Angle.FromDegrees(25);

    /// <summary>Least height of the lift on both sides of a half stop for it to be one, in millimetres.</summary>
    /// <remarks>Under half a thousandth of an inch nobody feels a stop; a round tang shows rounding noise only.</remarks>
    public const double LeastHalfStopDepthMm = 0.01;

    // Where the spring stops falling towards open, once that has been found: most often the shoulder butts there.
    private (SpringPose Holds, SpringPose Fails)? _openEnd;

    // A rest that falls on a pose of the track is that pose; which of the two is lower is rounding.
    private const double SameTurn = 1e-12;

    // A slope above this is rounding too: a face whose normal runs through the centre pin neither lifts nor lowers.
    private const double Vertical = 1e6;

    /// <summary>
    /// Where the open blade rests: going from mid-swing towards open, the angle at which the spring stops falling. That
    /// is where the shoulder butts on the end face, unless the open flat holds the blade before.
    /// </summary>
    public RestPose Open()
    {
        RestPose? best = null;
        SpringPose? last = null;
        foreach (SpringPose pose in FromMidSwingToOpen())
        {
            if (last is { } above && above.BladeAngle < Window && IsRising(above) && !IsRising(pose))
            {
                (SpringPose stop, SpringPose beyond) = Between(above, pose, IsRising);
                if (
                    best is not { } found
                    || Math.Abs(stop.BladeAngle.Radians) < Math.Abs(found.Pose.BladeAngle.Radians)
                )
                {
                    best = new RestPose(stop, Rests: true);
                    _openEnd = (stop, beyond);
                }
            }

            if (!pose.IsPossible)
            {
                // Not held open: the blade can still be pushed to where the shoulder butts.
                return best ?? new RestPose(Boundary(last ?? pose, pose, IsPossible), Rests: false);
            }

            last = pose;
        }

        return best ?? new RestPose(track.At(Angle.Zero), Rests: false);
    }

    /// <summary>
    /// The true open stop, where the shoulder butts on the end face: no pose is left beyond it, or, where a square
    /// shoulder does not overhang the circle about the centre pin, the shoulder begins to lift the nose.
    /// </summary>
    /// <returns>Null when the blade has no shoulder to meet.</returns>
    public SpringPose? Shoulder(FaceNaming faces)
    {
        bool IsOffShoulder(SpringPose pose) => pose.IsPossible && !IsCarriedByShoulder(pose, faces);
        SpringPose? last = null;
        foreach (SpringPose pose in FromMidSwingToOpen())
        {
            if (!IsOffShoulder(pose))
            {
                return last is not { } above ? null
                    : _openEnd is { } end
                    && end.Holds.BladeAngle <= above.BladeAngle
                    && end.Fails.BladeAngle >= pose.BladeAngle
                    && IsOffShoulder(end.Holds)
                    && !IsOffShoulder(end.Fails)
                        ? end.Holds
                    : Boundary(above, pose, IsOffShoulder);
            }

            last = pose;
        }

        return null;
    }

    /// <summary>The minimum of the lift nearest to a nominal blade angle, if there is one within the window.</summary>
    /// <param name="nominal">90 degrees for the half stop, 180 for closed.</param>
    /// <param name="leastDepthMm">Least height of the lift on both sides for the minimum to count.</param>
    public RestPose Near(Angle nominal, double leastDepthMm)
    {
        SpringPose? best = null;
        for (int i = 1; i < track.Poses.Count; i++)
        {
            SpringPose before = track.Poses[i - 1];
            SpringPose after = track.Poses[i];
            if (Math.Abs((before.BladeAngle - nominal).Radians) > Window.Radians || !IsFalling(before))
            {
                continue;
            }

            if (!after.IsPossible)
            {
                // The blade may still come to rest in the last fraction of a step before something stops it.
                after = Boundary(before, after, IsPossible);
            }

            if (IsFalling(after))
            {
                continue;
            }

            SpringPose rest = Boundary(before, after, IsFalling);
            bool nearer =
                best is not { } found
                || Math.Abs((rest.BladeAngle - nominal).Radians) < Math.Abs((found.BladeAngle - nominal).Radians);
            if (nearer && DepthMm(i, rest) >= leastDepthMm)
            {
                best = rest;
            }
        }

        if (best is { } minimum)
        {
            return new RestPose(minimum, Rests: true);
        }

        SpringPose atNominal = track.At(nominal);
        return new RestPose(atNominal.IsPossible ? atNominal : LastPossibleBefore(atNominal), Rests: false);
    }

    /// <summary>Highest points of the lift strictly between two blade angles.</summary>
    public IEnumerable<SpringPose> PeaksBetween(Angle from, Angle to)
    {
        for (int i = 1; i < track.Poses.Count; i++)
        {
            SpringPose before = track.Poses[i - 1];
            SpringPose after = track.Poses[i];
            bool inside = before.BladeAngle >= from && after.BladeAngle <= to;
            if (inside && IsRising(before) && after.IsPossible && !IsRising(after))
            {
                yield return Boundary(before, after, IsRising);
            }
        }
    }

    private IEnumerable<SpringPose> FromMidSwingToOpen() =>
        track.Poses.Reverse().Where(pose => pose.BladeAngle <= RotationTrack.MidSwing);

    private static bool IsCarriedByShoulder(SpringPose pose, FaceNaming faces)
    {
        BladeFace blade = faces.BladeFaceOf(pose.Support.BladeEdge, pose.Support.BladeVertex);
        SpringFace spring = faces.SpringFaceOf(pose.Support.SpringEdge, pose.Support.SpringVertex);

        // A hollow in the notch's corner is front wall to the nose's corner, though it may be flat to the underside.
        return blade == BladeFace.Shoulder
            || spring == SpringFace.EndFace
            || (blade == BladeFace.NotchCorner && spring == SpringFace.NoseCorner);
    }

    private static bool IsPossible(SpringPose pose) => pose.IsPossible;

    private static bool IsRising(SpringPose pose) =>
        pose.IsPossible && pose.Slope is > PoseBoundary.Level and < Vertical;

    private static bool IsFalling(SpringPose pose) =>
        pose.IsPossible && pose.Slope is < -PoseBoundary.Level and > -Vertical;

    /// <summary>The last pose, going from one towards another, at which a condition still holds.</summary>
    private SpringPose Boundary(SpringPose holds, SpringPose fails, Func<SpringPose, bool> condition) =>
        Between(holds, fails, condition).Holds;

    private (SpringPose Holds, SpringPose Fails) Between(
        SpringPose holds,
        SpringPose fails,
        Func<SpringPose, bool> condition
    ) => PoseBoundary.Between(solver, holds, fails, condition);

    private double DepthMm(int index, SpringPose rest)
    {
        double depth = double.PositiveInfinity;
        foreach (int direction in new[] { -1, 1 })
        {
            double highest = rest.Lowest.Radians;
            int i = direction < 0 ? index - 1 : index;
            for (; i >= 0 && i < track.Poses.Count && track.Poses[i].IsPossible; i += direction)
            {
                if (track.Poses[i].Lowest.Radians < highest - SameTurn)
                {
                    break;
                }

                highest = Math.Max(highest, track.Poses[i].Lowest.Radians);
            }

            depth = Math.Min(depth, solver.Knife.LiftMm(rest.Lowest, new Angle(highest)));
        }

        return depth;
    }

    private SpringPose LastPossibleBefore(SpringPose impossible)
    {
        SpringPose last = track.Poses.Last(pose => pose.IsPossible && pose.BladeAngle <= impossible.BladeAngle);
        return Boundary(last, impossible, IsPossible);
    }
}
