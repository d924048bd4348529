using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Handle;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>What a chart of the handle shows, before it is drawn.</summary>
internal sealed record HandleLines
{
    /// <summary>What the upright axis counts, with its unit.</summary>
    public required string Title { get; init; }

    /// <summary>What the lower axis counts.</summary>
    public required string XTitle { get; init; }

    public required Func<double, string> XWords { get; init; }

    /// <summary>The curves, the most important last, so that it is drawn over the others.</summary>
    public required ImmutableArray<HandleLine> Lines { get; init; }

    /// <summary>Places along the lower axis that have a name, from left to right.</summary>
    public required ImmutableArray<(double X, string Name)> Marks { get; init; }

    /// <summary>Where the blade rests, where that is a place on the chart.</summary>
    public ImmutableArray<Point> Rests { get; init; } = [];

    /// <summary>Unit of the right axis in units of the left one; null for none.</summary>
    public double? RightUnit { get; init; }

    /// <summary>Name of the right axis.</summary>
    public string RightTitle { get; init; } = "";

    /// <summary>The chart in a sentence, for who does not see it.</summary>
    public string Description =>
        $"{Title}, over {XTitle}. "
        + string.Join(
            " ",
            Lines
                .Reverse()
                .Select(line => (line.Name, Top: line.Points.MaxBy(point => point.Y)))
                .Select(line =>
                    $"{line.Name}: highest {Measure.Typeset.Number(line.Top.Y, 2)} at {XWords(line.Top.X)}."
                )
        );

    public static HandleLines Of(HandleReport report, HandleCurve curve) =>
        curve switch
        {
            HandleCurve.Lift => Lift(report),
            HandleCurve.Torque => Torque(report),
            HandleCurve.Energy => Energy(report),
            _ => Stress(report),
        };

    private static HandleLines Lift(HandleReport report) =>
        OverTheRotation(
            report,
            "Lift, mm",
            new HandleLine(Ink.SecondCurve, "on the bench", Over(report, s => s.BenchLiftMm)),
            new HandleLine(Ink.Curve, "in the handle", Over(report, s => s.LiftMm))
        ) with
        {
            Rests = [.. report.Stops.Select(stop => new Point(stop.RestAngle.Degrees, stop.LiftMm))],
            RightUnit = Measure.MmPerThou,
            RightTitle = "thou",
        };

    private static HandleLines Torque(HandleReport report) =>
        OverTheRotation(
            report,
            "Torque of the hand, N mm",
            new HandleLine(Ink.ThirdCurve, "no friction", Over(report, s => s.TorqueNmm)),
            new HandleLine(Ink.SecondCurve, "opening", Over(report, s => -s.OpeningTorqueNmm)),
            new HandleLine(Ink.Curve, "closing", Over(report, s => s.ClosingTorqueNmm))
        );

    private static HandleLines Energy(HandleReport report) =>
        OverTheRotation(
            report,
            "Strain energy of the spring, N mm",
            new HandleLine(Ink.Curve, "without friction", Over(report, s => s.EnergyNmm))
        );

    private static HandleLines Stress(HandleReport report)
    {
        SpringFigures spring = report.Spring;
        double centrePin = -spring.StiffNoseMm - spring.OverhangMm;
        return new HandleLines
        {
            Title = "Bending stress, MPa",
            XTitle = "mm behind the pivot",
            XWords = x => Measure.Typeset.Number(-x, 0),
            Lines =
            [
                new HandleLine(
                    Ink.SecondCurve,
                    "open",
                    [.. report.StressAlong.Select(place => new Point(place.XMm, place.OpenMpa))]
                ),
                new HandleLine(
                    Ink.Curve,
                    $"at most, blade at {Measure.Typeset.Degrees(report.Strength.BladeAngle, 0)}",
                    [.. report.StressAlong.Select(place => new Point(place.XMm, place.PeakMpa))]
                ),
            ],
            Marks = [(centrePin - spring.SpanMm, "rear pin"), (centrePin, "centre pin")],
        };
    }

    private static HandleLines OverTheRotation(HandleReport report, string title, params HandleLine[] lines) =>
        new()
        {
            Title = title,
            XTitle = "blade angle",
            XWords = deg => Measure.Typeset.Degrees(Angle.FromDegrees(deg), 0),
            Lines = [.. lines],
            Marks = [.. report.Stops.Select(stop => (stop.RestAngle.Degrees, StopNames.Of(stop.Stop)))],
        };

    private static ImmutableArray<Point> Over(HandleReport report, Func<HandleSample, double> value) =>
        [.. report.Curve.Select(sample => new Point(sample.BladeAngle.Degrees, value(sample)))];
}

/// <summary>A curve on a chart of the handle.</summary>
internal readonly record struct HandleLine(Ink Ink, string Name, ImmutableArray<Point> Points);
