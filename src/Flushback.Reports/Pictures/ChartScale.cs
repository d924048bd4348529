using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>Where blade angles and lifts come to lie on a lift chart.</summary>
internal sealed class ChartScale
{
    /// <summary>A curve flatter than this is drawn flat, not blown up.</summary>
    private const double LeastSpanMm = 0.05;

    public ChartScale(BenchReport report, ChartShape shape)
    {
        bool wide = shape == ChartShape.Wide;
        Width = wide ? 1000 : 420;
        Height = wide ? 500 : 470;
        TextSize = wide ? 16 : 14.5;
        WindowReachDeg = wide ? 8 : 14;
        Field = new CurveField(
            ValuesOf(report, roomForWords: wide ? 0.22 : 0.26),
            wide ? new Box(70, 64, 924, 396) : new Box(46, 62, 372, 352),
            XStep: wide ? 15 : 45,
            MostYTicks: 6
        );
    }

    public double Width { get; }

    public double Height { get; }

    public double TextSize { get; }

    /// <summary>Blade angles in degrees and lifts in millimetres.</summary>
    public CurveField Field { get; }

    /// <summary>The framed field of the curve, in picture units.</summary>
    public Box Plot => Field.Plot;

    /// <summary>The strip under the field that shows what carries the spring.</summary>
    public Box Strip => new(Plot.MinX, Plot.MaxY + 38, Plot.MaxX, Plot.MaxY + 66);

    /// <summary>How far a stop's window is drawn to either side of its rest angle.</summary>
    public double WindowReachDeg { get; }

    public double X(Angle bladeAngle) => X(bladeAngle.Degrees);

    public double X(double deg) => Field.X(deg);

    public double Y(double liftMm) => Field.Y(liftMm);

    public Point At(Angle bladeAngle, double liftMm) => new(X(bladeAngle), Y(liftMm));

    private static Box ValuesOf(BenchReport report, double roomForWords)
    {
        double[] angles = [0, 180, .. report.Curve.Samples.Select(sample => sample.BladeAngle.Degrees)];
        double[] lifts =
        [
            .. report.Curve.Samples.Select(sample => sample.LiftMm),
            .. report.Stops.Select(VerdictWords.Floor),
            .. report.Stops.Select(VerdictWords.Ceiling),
        ];
        double low = lifts.Min();
        double high = Math.Max(lifts.Max(), low + LeastSpanMm);

        // Room above for the words at the peaks, a little below so that the windows do not sit on the axis.
        return new Box(angles.Min(), low - (0.07 * (high - low)), angles.Max(), high + (roomForWords * (high - low)));
    }
}
