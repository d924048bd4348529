using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>Reports for the tests: one in order, one that reads badly, and the cases in between.</summary>
internal static class SampleReports
{
    public static readonly string[] Repairs =
    [
        "The drawing is in millimetres, as it says itself.",
        "The spring's outline was open by 0.004 mm near x 12.31, y 40.02; the two ends were joined.",
    ];

    private static readonly RigidMotion Upright = new(Angle.Zero, new Vector(120, 80));

    private static readonly RigidMotion Flipped = new(Angle.FromDegrees(30), new Vector(-14.2, 33.7), Mirrored: true);

    /// <summary>Every reading in its window, no finding.</summary>
    public static BenchReport InOrder() =>
        new StraightSpringBench(new StraightSpringKnife()).Report(new BenchSettings(), Upright);

    /// <summary>The same, with nothing to measure the tip against.</summary>
    public static BenchReport WithoutHandle() =>
        new StraightSpringBench(new StraightSpringKnife()).Report(new BenchSettings(), Upright, withHandle: false);

    /// <summary>A tang that is carried past 90 degrees without a rest.</summary>
    public static BenchReport WithoutHalfStop()
    {
        BenchReport report = InOrder();
        return report with
        {
            HasHalfStop = false,
            Stops = [.. report.Stops.Where(reading => reading.Stop != Stop.HalfStop)],
        };
    }

    /// <summary>A blade that hangs far short of closed, the spring high up.</summary>
    public static BenchReport DoesNotRest()
    {
        BenchReport report = InOrder();
        StopReading closed = report.At(Stop.Closed)! with
        {
            Rests = false,
            Verdict = ReadingVerdict.NoRest,
            RestAngle = Angle.FromDegrees(165),
            SpringRotation = StraightSpringKnife.RotationFor(1.2),
            LiftMm = 1.2,
            LiftAtNominalMm = null,
            Contacts = [],
        };
        return report with { Stops = [report.Stops[0], report.Stops[1], closed] };
    }

    /// <summary>A mirrored drawing of a knife that reads badly in every way a report can show.</summary>
    public static BenchReport ReadsBadly()
    {
        BenchReport report = new StraightSpringBench(new StraightSpringKnife(0.305, 0.292)).Report(
            new BenchSettings(),
            Flipped
        );
        StopReading half = report.At(Stop.HalfStop)!;
        StopReading closed = report.At(Stop.Closed)! with { Contacts = [FlatOnFlat(report.At(Stop.Closed)!)] };
        return report with
        {
            Stops = [report.Stops[0], half, closed],
            CornerGap = report.CornerGap!.Value with { GapMm = 0.04 },
            Clearances = report.Clearances with { TipDepthMm = -0.312 },
            Findings =
            [
                new Finding(
                    FindingCodes.TipProud,
                    Severity.Fault,
                    "The tip stands 0.312 mm out of the handle when closed.",
                    "Take metal off the front end of the closed face, which sinks the tip; never shorten the tip first.",
                    Stop.Closed,
                    report.Clearances.TipClosedAt,
                    -0.312,
                    0.5,
                    "mm"
                ),
                new Finding(
                    FindingCodes.ReadingHigh,
                    Severity.Warning,
                    "The half stop reads high.",
                    "Take 0.127 mm off the half-stop face, evenly at both contacts, and read the dial again.",
                    Stop.HalfStop,
                    half.Contacts[0].At,
                    half.LiftMm,
                    0.1778,
                    "mm"
                ),
                new Finding(
                    FindingCodes.ReadingLow,
                    Severity.Warning,
                    "The closed position reads low.",
                    "Metal cannot be put back: lower the open flat instead, which raises the other two readings.",
                    Stop.Closed,
                    null,
                    0.292,
                    0.3302,
                    "mm"
                ),
                new Finding(
                    FindingCodes.FaceContact,
                    Severity.Warning,
                    "The closed face lies flat on the underside along 9.6 mm, so the blade will wobble as it wears.",
                    "Relieve the middle of the closed face by a few hundredths, so that only its two ends touch.",
                    Stop.Closed,
                    closed.Contacts[0].At,
                    closed.Contacts[0].LengthMm,
                    0.25,
                    "mm"
                ),
                new Finding(
                    FindingCodes.CornerTouching,
                    Severity.Warning,
                    "The nose nearly touches the inner corner of the notch.",
                    "Open the corner of the notch with a fine file or a small drill.",
                    Stop.Open,
                    report.CornerGap!.Value.Corner,
                    0.04,
                    0.1,
                    "mm"
                ),
                new Finding(
                    FindingCodes.RestAngleOff,
                    Severity.Note,
                    "The half stop rests a little short of square.",
                    "Nothing to do unless it shows.",
                    Stop.HalfStop,
                    null,
                    half.RestAngle.Degrees,
                    90,
                    "deg"
                ),
                new Finding(
                    FindingCodes.ManyContacts,
                    Severity.Note,
                    "One place counts twice.",
                    "Nothing to do.",
                    Value: 3,
                    Limit: 2
                ),
            ],
        };
    }

    private static Contact FlatOnFlat(StopReading reading) =>
        reading.Contacts[0] with
        {
            At = reading.Contacts[0].At.MidpointTo(reading.Contacts[1].At),
            BladeFace = BladeFace.ClosedFace,
            LengthMm = reading.ContactSpreadMm,
        };
}
