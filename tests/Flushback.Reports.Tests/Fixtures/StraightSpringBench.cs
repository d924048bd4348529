using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>
/// What the bench shows for the <see cref="StraightSpringKnife"/>: the straight underside rests on the highest of the
/// tang's corners. A stand-in written for these tests, so that reports are tested without the mechanism.
/// </summary>
internal sealed class StraightSpringBench(StraightSpringKnife shape)
{
    private readonly (Point Corner, BladeFace Face)[] _corners =
    [
        (shape.OpenCorner, BladeFace.OpenCorner),
        (shape.ClosedCorner, BladeFace.ClosedCorner),
        (shape.Kick, BladeFace.Kick),
    ];

    public BenchReport Report(BenchSettings settings, RigidMotion toDrawing, bool withHandle = true)
    {
        Knife knife = shape.Build(withHandle);
        ImmutableArray<StopReading> stops = [.. Stops(knife, settings)];
        ImmutableArray<LiftSample> samples = [.. Samples(knife, stops, withHandle)];
        return new BenchReport
        {
            Placement = new Placement(knife, toDrawing, Angle.FromDegrees(0), DrawnBladeAngleFound: true),
            Settings = settings,
            Stops = stops,
            Peaks = [.. Peaks(samples)],
            Curve = new LiftCurve(samples, [.. Intervals(samples)]),
            CornerGap = new CornerGap(0.612, new Point(4.05, 3.72), new Point(3.64, 4.14)),
            Clearances = new Clearances(
                new LeastClearance(0.841, Angle.FromDegrees(179.22), new Point(-30.2, 2.66)),
                new LeastClearance(0.622, Angle.FromDegrees(176.5), new Point(-25.1, 2.88)),
                new LeastClearance(5.102, Angle.FromDegrees(179.22), new Point(-69.4, -3.7)),
                new LeastClearance(0.841, Angle.FromDegrees(179.22), new Point(-32.5, 2.7)),
                new Point(-69.4, -4.1),
                withHandle ? 2.204 : null
            ),
            HasHalfStop = true,
            Findings = withHandle
                ? []
                :
                [
                    new Finding(
                        FindingCodes.NoHandle,
                        Severity.Note,
                        "No handle outline was given, so how deep the tip lies is not known.",
                        "Draw the handle's outline to have the tip checked."
                    ),
                ],
        };
    }

    private IEnumerable<StopReading> Stops(Knife knife, BenchSettings settings)
    {
        yield return Stop(
            knife,
            settings,
            Mechanism.Bench.Stop.Open,
            0,
            [
                At(shape.OpenCorner, new Vector(0, 1), BladeFace.OpenCorner, SpringFace.Underside),
                At(
                    StraightSpringKnife.Butt,
                    new Vector(-2.72, -1.02).Normalized,
                    BladeFace.Shoulder,
                    SpringFace.EndFace
                ),
            ],
            [At(new Point(3.2, 3.99), new Vector(0, 1), BladeFace.OpenFlat, SpringFace.Underside) with { GapMm = 0.02 }]
        );
        yield return Resting(
            knife,
            settings,
            Mechanism.Bench.Stop.HalfStop,
            shape.HalfStopLiftMm,
            [_corners[1], _corners[0]]
        );
        yield return Resting(
            knife,
            settings,
            Mechanism.Bench.Stop.Closed,
            shape.ClosedLiftMm,
            [_corners[2], _corners[1]]
        );
    }

    private static StopReading Resting(
        Knife knife,
        BenchSettings settings,
        Stop stop,
        double liftMm,
        (Point Corner, BladeFace Face)[] corners
    )
    {
        // The face lies along the underside, so the blade is turned back by as much as the spring has risen.
        Angle rotation = StraightSpringKnife.RotationFor(liftMm);
        Angle rest = Nominal(stop) - rotation;
        Vector up = Vector.FromDirection(Angle.FromDegrees(90) + rotation);
        return Stop(
            knife,
            settings,
            stop,
            liftMm,
            [
                .. corners
                    .Select(corner =>
                        At(Knife.BladeAt(rest).Apply(corner.Corner), up, corner.Face, SpringFace.Underside)
                    )
                    .OrderBy(contact => contact.At.X),
            ],
            []
        );
    }

    private static StopReading Stop(
        Knife knife,
        BenchSettings settings,
        Stop stop,
        double liftMm,
        ImmutableArray<Contact> contacts,
        ImmutableArray<Contact> nearMisses
    )
    {
        StopTarget target = settings.Targets.For(stop);
        Angle rotation = StraightSpringKnife.RotationFor(liftMm);
        return new StopReading
        {
            Stop = stop,
            Rests = true,
            RestAngle = Nominal(stop) - rotation,
            NominalAngle = Nominal(stop),
            SpringRotation = rotation,
            ShoulderAngle = stop == Mechanism.Bench.Stop.Open ? Angle.Zero : null,
            LiftMm = knife.LiftMm(Angle.Zero, rotation),
            LiftAtNominalMm = liftMm + (stop == Mechanism.Bench.Stop.Open ? 0 : 0.018),
            Target = target,
            Verdict =
                liftMm > target.LiftMm + target.ToleranceMm ? ReadingVerdict.High
                : liftMm < target.LiftMm - target.ToleranceMm ? ReadingVerdict.Low
                : ReadingVerdict.Good,
            Contacts = contacts,
            NearMisses = nearMisses,
            ContactSpreadMm = contacts[0].At.DistanceTo(contacts[^1].At),
        };
    }

    private IEnumerable<LiftSample> Samples(Knife knife, ImmutableArray<StopReading> stops, bool withHandle)
    {
        IEnumerable<Angle> angles = Enumerable
            .Range(0, 361)
            .Select(half => Angle.FromDegrees(half / 2.0))
            .Concat(stops.Select(stop => stop.RestAngle))
            .Distinct()
            .Order();
        foreach (Angle angle in angles)
        {
            (Angle rotation, BladeFace face) = Carried(angle);
            var step = new Angle(1e-6);
            double slope = (Lift(knife, angle + step) - Lift(knife, angle - step)) / (2 * step.Radians);
            Point tip = Knife.BladeAt(angle).Apply(new Point(69.5, 3.2));
            yield return new LiftSample(
                angle,
                rotation,
                knife.LiftMm(Angle.Zero, rotation),
                slope,
                face,
                SpringFace.Underside,
                Math.Min(12, 0.841 + (0.25 * Math.Abs(179.22 - angle.Degrees))),
                Math.Max(0, 4.4 - tip.Y),
                Math.Min(30, 0.841 + (0.5 * Math.Abs(179.22 - angle.Degrees))),
                withHandle ? Math.Min(6.3, tip.Y + 6.3) : null
            );
        }
    }

    private double Lift(Knife knife, Angle angle) => knife.LiftMm(Angle.Zero, Carried(angle).Rotation);

    // The underside passes 1.4 mm below the pin: it touches a corner at distance r from the pin when its rotation is
    // the corner's polar angle about the pin plus asin(1.4 / r). The largest such rotation holds.
    private (Angle Rotation, BladeFace Face) Carried(Angle bladeAngle) =>
        _corners
            .Select(corner =>
            {
                Vector arm = Knife.BladeAt(bladeAngle).Apply(corner.Corner) - StraightSpringKnife.CentrePin.Centre;
                double beside = Math.Asin(StraightSpringKnife.PinAboveUndersideMm / arm.Length);
                return (Rotation: new Angle(arm.Direction.Radians + beside), corner.Face);
            })
            .MaxBy(carried => carried.Rotation);

    private static IEnumerable<LiftPeak> Peaks(ImmutableArray<LiftSample> samples) =>
        Enumerable
            .Range(1, samples.Length - 2)
            .Where(i => samples[i].LiftMm > samples[i - 1].LiftMm && samples[i].LiftMm >= samples[i + 1].LiftMm)
            .Select(i => new LiftPeak(samples[i].BladeAngle, samples[i].LiftMm, samples[i].BladeFace));

    private static IEnumerable<CarriedInterval> Intervals(ImmutableArray<LiftSample> samples)
    {
        int first = 0;
        for (int i = 1; i <= samples.Length; i++)
        {
            if (i == samples.Length || samples[i].BladeFace != samples[first].BladeFace)
            {
                LiftSample last = samples[Math.Min(i, samples.Length - 1)];
                yield return new CarriedInterval(
                    samples[first].BladeAngle,
                    last.BladeAngle,
                    samples[first].BladeFace,
                    samples[first].SpringFace
                );
                first = i;
            }
        }
    }

    private static Angle Nominal(Stop stop) => Angle.FromDegrees(90 * (int)stop);

    private static Contact At(Point at, Vector normal, BladeFace blade, SpringFace spring) =>
        new(at, normal, 0, blade, spring, 0, 0.9);
}
