using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Materials;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>
/// What a handle might report of the sample knives: a spring of one rate on their lift curve. A stand-in written for
/// these tests, so that reports are tested without the mechanism.
/// </summary>
internal static class SampleHandles
{
    private const double RateNPerMm = 74;
    private const double PreloadMm = 0.5;
    private const double LeverMm = 5;
    private const double CentrePinX = -28;
    private const double RearPinX = -78;

    /// <summary>All as it should be.</summary>
    public static HandleReport Sound() => Report(SampleReports.InOrder(), stressPerMm: 330);

    /// <summary>Bent too far, pressed too hard, and without a rest at the half stop.</summary>
    public static HandleReport TakesASet()
    {
        HandleReport report = Report(SampleReports.ReadsBadly(), stressPerMm: 640);
        return report with
        {
            Settings = report.Settings with { SpringHardnessHrc = 58, BladeHardnessHrc = 52 },
            Stops =
            [
                .. report.Stops.Select(stop =>
                    stop.Stop == Stop.HalfStop ? stop with { Rests = false, TakesOver = Angle.Zero } : stop
                ),
            ],
            Strength = report.Strength with { Life = SpringLife.TakesSet, GerberMargin = 0, YieldMargin = 0.41 },
            Findings =
            [
                new Finding(
                    FindingCodes.SpringTakesSet,
                    Severity.Fault,
                    "The spring takes a set.",
                    "Leave more metal round the centre pin's hole, or take less preload.",
                    Value: 1545,
                    Limit: 1040,
                    Unit: "MPa"
                ),
                new Finding(
                    FindingCodes.HardnessPair,
                    Severity.Warning,
                    "A blade of 52 HRC on a spring of 58 HRC is not the usual pair.",
                    "Temper the spring to a blue of 40 to 45 HRC under a blade of 55 to 60.",
                    Value: -6,
                    Unit: "HRC"
                ),
            ],
        };
    }

    /// <summary>A hardness for which no strength is published.</summary>
    public static HandleReport OfUnknownStrength()
    {
        HandleReport report = Sound();
        return report with
        {
            Strength = report.Strength with
            {
                TensileMpa = null,
                Life = SpringLife.Unknown,
                GerberMargin = null,
                YieldMargin = null,
            },
        };
    }

    private static HandleReport Report(BenchReport bench, double stressPerMm)
    {
        ImmutableArray<HandleSample> curve = [.. bench.Curve.Samples.Select(sample => Sample(sample, stressPerMm))];
        HandleSample worst = curve.MaxBy(sample => sample.PeakStressMpa);
        HandleSample pull = curve.Where(sample => sample.BladeAngle.Degrees > 135).MaxBy(s => s.OpeningTorqueNmm);
        double openMpa = curve[0].PeakStressMpa;
        return new HandleReport
        {
            Settings = new HandleSettings { WidthMm = 3.2, PreloadMm = PreloadMm },
            Spring = new SpringFigures(
                PreloadMm,
                StiffNoseMm: 4.4,
                OverhangMm: -CentrePinX - 4.4,
                SpanMm: CentrePinX - RearPinX,
                RateNPerMm,
                ModulusMpa: 206_000
            ),
            Stops = [.. bench.Stops.Select(stop => At(stop, stressPerMm))],
            Curve = curve,
            Pull = new NailPull(40, pull.OpeningTorqueNmm / 40, curve.Max(s => -s.TorqueNmm) / 40, pull.BladeAngle),
            StressAlong =
            [
                .. Enumerable
                    .Range((int)RearPinX, 74)
                    .Select(x => new StressPoint(x, openMpa * Share(x), worst.PeakStressMpa * Share(x))),
            ],
            Strength = new StrengthVerdict(
                worst.PeakStressMpa,
                CentrePinX,
                worst.BladeAngle,
                new ValueRange(1386, 1436),
                SpringLife.Limited,
                1.95,
                1.73
            ),
            Sensitivities =
            [
                new Sensitivity(Dimension.SpringDepth, 8.7, 357, -0.01),
                new Sensitivity(Dimension.SpringWidth, 3.6, 0, 0),
                new Sensitivity(Dimension.Preload, 5.8, 324, 0.062),
                new Sensitivity(Dimension.CentrePinForward, 0.4, 11, 0.0003),
                new Sensitivity(Dimension.StiffNose, 0.01, 1.2, -0.001),
            ],
            Findings = [],
        };
    }

    private static HandleSample Sample(LiftSample bench, double stressPerMm)
    {
        double lift = bench.LiftMm - (0.03 * Math.Sin(bench.BladeAngle.Radians));
        double sunkMm = PreloadMm + lift;
        double torque = RateNPerMm * sunkMm * bench.SlopeMmPerRad;
        double friction = 0.15 * RateNPerMm * sunkMm * LeverMm;
        return new HandleSample(
            bench.BladeAngle,
            lift,
            bench.LiftMm,
            RateNPerMm * sunkMm * sunkMm / 2,
            torque,
            torque + friction,
            friction - torque,
            RateNPerMm * sunkMm,
            stressPerMm * sunkMm
        );
    }

    // A straight line to the centre pin from either end, and half as much again at its hole.
    private static double Share(int x) =>
        x == CentrePinX ? 1
        : x < CentrePinX ? 0.7 * (x - RearPinX) / (CentrePinX - RearPinX)
        : 0.7 * x / CentrePinX;

    private static HandleStop At(StopReading bench, double stressPerMm)
    {
        double sunkMm = PreloadMm + bench.LiftMm;
        return new HandleStop(
            bench.Stop,
            bench.Rests,
            bench.RestAngle - Angle.FromDegrees(0.3),
            bench.LiftMm - (bench.Stop == Stop.Open ? 0 : 0.016),
            bench.LiftMm,
            stressPerMm * sunkMm,
            [
                .. bench.Contacts.Select(
                    (contact, i) =>
                        new HandleContact(
                            contact.At,
                            contact.Normal,
                            RateNPerMm * sunkMm / bench.Contacts.Length,
                            contact.BladeFace,
                            contact.SpringFace,
                            contact.BladeFace == BladeFace.Kick ? 857 + (10 * i) : null,
                            1964
                        )
                ),
            ],
            SnapNmm: 300 * sunkMm,
            Angle.FromDegrees(33)
        );
    }
}
