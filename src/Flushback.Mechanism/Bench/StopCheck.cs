using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench;

/// <summary>Reads the dial at the stops alone: the part of a bench check that has to be quick.</summary>
public sealed class StopCheck
{
    private static readonly Angle _quarterTurn = Angle.FromDegrees(90);
    private static readonly Angle _halfTurn = Angle.FromDegrees(180);

    private readonly BenchSettings _settings;
    private readonly ContactFinder _finder;
    private readonly Angle _zero;

    private StopCheck(Knife knife, BenchSettings settings, CancellationToken cancellation)
    {
        _settings = settings;
        Solver = new BenchSolver(knife, cancellation);
        Track = RotationTrack.Follow(Solver, cancellation);
        Faces = new FaceNaming(knife);
        Stops = new StopFinder(Solver, Track);
        _finder = new ContactFinder(knife, Faces, settings, cancellation);

        RestPose open = Stops.Open();
        RestPose half = Stops.Near(_quarterTurn, StopFinder.LeastHalfStopDepthMm);
        RestPose closed = Stops.Near(_halfTurn, leastDepthMm: 0);
        bool hasHalfStop = knife.HasHalfStop ?? half.Rests;
        _zero = open.Pose.Lowest;
        Rests = hasHalfStop ? [open.Pose, half.Pose, closed.Pose] : [open.Pose, closed.Pose];

        StopReading atOpen = Read(Stop.Open, Angle.Zero, open) with
        {
            ShoulderAngle = Stops.Shoulder(Faces)?.BladeAngle,
        };
        StopReading atClosed = Read(Stop.Closed, _halfTurn, closed);
        Readings = new StopReadings(
            hasHalfStop ? [atOpen, Read(Stop.HalfStop, _quarterTurn, half), atClosed] : [atOpen, atClosed],
            _zero,
            hasHalfStop
        );
    }

    /// <summary>What the dial shows.</summary>
    public StopReadings Readings { get; }

    /// <summary>The pose at each stop, in the order of the readings.</summary>
    internal ImmutableArray<SpringPose> Rests { get; }

    internal BenchSolver Solver { get; }

    internal RotationTrack Track { get; }

    internal FaceNaming Faces { get; }

    internal StopFinder Stops { get; }

    /// <summary>Turns the blade through its rotation and reads the dial where it rests.</summary>
    /// <param name="knife">The knife in its frame.</param>
    /// <param name="settings">Targets and tolerances.</param>
    /// <param name="cancellation">Looked at once a pose of the spring, and while contacts are listed.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static StopCheck Run(Knife knife, BenchSettings settings, CancellationToken cancellation = default) =>
        new(knife, settings, cancellation);

    private const int NearMissesTold = 3;

    private StopReading Read(Stop stop, Angle nominal, RestPose rest)
    {
        SpringPose pose = rest.Pose;
        SpringPose atNominal = Track.At(nominal);
        (List<Contact> contacts, List<Contact> nearMisses) = _finder.At(pose.BladeAngle, pose.Lowest);
        double lift = Solver.Knife.LiftMm(_zero, pose.Lowest);
        StopTarget target = _settings.Targets.For(stop);
        return new StopReading
        {
            Stop = stop,
            Rests = rest.Rests,
            RestAngle = pose.BladeAngle,
            NominalAngle = nominal,
            SpringRotation = pose.Lowest,
            LiftMm = lift,
            LiftAtNominalMm = atNominal.IsPossible ? Solver.Knife.LiftMm(_zero, atNominal.Lowest) : null,
            Target = target,
            Verdict = Judge(rest.Rests, lift, target),
            Contacts = [.. contacts],
            NearMisses = [.. nearMisses.Take(NearMissesTold)],
            ContactSpreadMm = Spread(contacts),
        };
    }

    private static ReadingVerdict Judge(bool rests, double liftMm, StopTarget target) =>
        !rests ? ReadingVerdict.NoRest
        : liftMm > target.LiftMm + target.ToleranceMm ? ReadingVerdict.High
        : liftMm < target.LiftMm - target.ToleranceMm ? ReadingVerdict.Low
        : ReadingVerdict.Good;

    private static double Spread(List<Contact> contacts)
    {
        Point[] ends = [.. contacts.SelectMany(contact => contact.Ends)];
        double spread = 0;
        foreach (Point a in ends)
        {
            foreach (Point b in ends)
            {
                spread = Math.Max(spread, a.DistanceTo(b));
            }
        }

        return spread;
    }
}
