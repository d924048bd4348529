using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench;

/// <summary>Reads the dial: the whole bench check of one knife.</summary>
public static class BenchCheck
{
    private const int NearMissesTold = 3;

    private static readonly Angle _quarterTurn = Angle.FromDegrees(90);
    private static readonly Angle _halfTurn = Angle.FromDegrees(180);

    /// <summary>Turns the blade through its rotation and reports what the bench shows.</summary>
    /// <param name="placement">The knife in its frame, from <see cref="KnifePlacement"/>.</param>
    /// <param name="settings">Targets, tolerances and resolution.</param>
    /// <param name="cancellation">Looked at once a pose of the spring, and while contacts are listed.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static BenchReport Run(Placement placement, BenchSettings settings, CancellationToken cancellation = default)
    {
        Knife knife = placement.Knife;
        BenchSolver solver = new(knife, cancellation);
        RotationTrack track = RotationTrack.Follow(solver, cancellation);
        StopFinder stops = new(solver, track);
        FaceNaming faces = new(knife);

        RestPose open = stops.Open();
        RestPose half = stops.Near(_quarterTurn, StopFinder.LeastHalfStopDepthMm);
        RestPose closed = stops.Near(_halfTurn, leastDepthMm: 0);
        bool hasHalfStop = knife.HasHalfStop ?? half.Rests;

        ContactFinder contacts = new(knife, faces, settings, cancellation);
        StopReader reader = new(solver, track, contacts, settings, open.Pose.Lowest);
        ImmutableArray<StopReading>.Builder readings = ImmutableArray.CreateBuilder<StopReading>();
        readings.Add(
            reader.Read(Stop.Open, Angle.Zero, open) with
            {
                ShoulderAngle = stops.Shoulder(faces)?.BladeAngle,
            }
        );
        if (hasHalfStop)
        {
            readings.Add(reader.Read(Stop.HalfStop, _quarterTurn, half));
        }

        readings.Add(reader.Read(Stop.Closed, _halfTurn, closed));

        List<SpringPose> rests = [open.Pose, .. hasHalfStop ? [half.Pose] : Array.Empty<SpringPose>(), closed.Pose];
        ClearanceMeter clearances = new(knife);
        LiftCurve curve = new LiftSweep(solver, track, faces, clearances).Run(
            open.Pose.Lowest,
            rests,
            settings.Step,
            cancellation
        );

        BenchReport report = new()
        {
            Placement = placement,
            Settings = settings,
            Stops = readings.ToImmutable(),
            Peaks =
            [
                .. stops
                    .PeaksBetween(open.Pose.BladeAngle, closed.Pose.BladeAngle)
                    .Select(peak => new LiftPeak(
                        peak.BladeAngle,
                        knife.LiftMm(open.Pose.Lowest, peak.Lowest),
                        faces.BladeFaceOf(peak.Support.BladeEdge, peak.Support.BladeVertex)
                    )),
            ],
            Curve = curve,
            CornerGap = clearances.CornerGapAt(open.Pose),
            Clearances = ClearanceSummary.Of(curve, clearances, closed.Pose),
            HasHalfStop = hasHalfStop,
            Findings = [],
        };
        return report with { Findings = FindingRules.Judge(report, solver) };
    }

    /// <summary>Reads one stop from the pose in which the blade rests there.</summary>
    private sealed class StopReader(
        BenchSolver solver,
        RotationTrack track,
        ContactFinder finder,
        BenchSettings settings,
        Angle zero
    )
    {
        public StopReading Read(Stop stop, Angle nominal, RestPose rest)
        {
            SpringPose pose = rest.Pose;
            SpringPose atNominal = track.At(nominal);
            (List<Contact> contacts, List<Contact> nearMisses) = finder.At(pose.BladeAngle, pose.Lowest);
            double lift = solver.Knife.LiftMm(zero, pose.Lowest);
            StopTarget target = settings.Targets.For(stop);
            return new StopReading
            {
                Stop = stop,
                Rests = rest.Rests,
                RestAngle = pose.BladeAngle,
                NominalAngle = nominal,
                SpringRotation = pose.Lowest,
                LiftMm = lift,
                LiftAtNominalMm = atNominal.IsPossible ? solver.Knife.LiftMm(zero, atNominal.Lowest) : null,
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
            Point[] ends = [.. contacts.SelectMany(Ends)];
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

        private static IEnumerable<Point> Ends(Contact contact)
        {
            Vector half = contact.Normal.Left * (contact.LengthMm / 2);
            return contact.LengthMm > 0 ? [contact.At - half, contact.At + half] : [contact.At];
        }
    }
}
