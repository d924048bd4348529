using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>Where blade angles and lifts come to lie on a lift chart, and where its ticks stand.</summary>
internal sealed class ChartScale
{
    /// <summary>A curve flatter than this is drawn flat, not blown up.</summary>
    private const double LeastSpanMm = 0.05;

    private readonly double _firstDeg;
    private readonly double _lastDeg;
    private readonly double _lowMm;
    private readonly double _highMm;

    public ChartScale(BenchReport report, ChartShape shape)
    {
        IEnumerable<double> angles = report.Curve.Samples.Select(sample => sample.BladeAngle.Degrees);
        _firstDeg = angles.Append(0).Min();
        _lastDeg = angles.Append(180).Max();

        IEnumerable<double> lifts =
        [
            .. report.Curve.Samples.Select(sample => sample.LiftMm),
            .. report.Stops.Select(VerdictWords.Floor),
            .. report.Stops.Select(VerdictWords.Ceiling),
        ];
        double low = lifts.Min();
        double high = Math.Max(lifts.Max(), low + LeastSpanMm);

        // Room above for the words at the peaks, a little below so that the windows do not sit on the axis.
        bool wide = shape == ChartShape.Wide;
        _lowMm = low - (0.07 * (high - low));
        _highMm = high + ((wide ? 0.22 : 0.26) * (high - low));

        Width = wide ? 1000 : 420;
        Height = wide ? 500 : 470;
        TextSize = wide ? 16 : 14.5;
        Plot = wide ? new Box(70, 64, 924, 396) : new Box(46, 62, 372, 352);
        TickStepDeg = wide ? 15 : 45;
        WindowReachDeg = wide ? 8 : 14;
    }

    public double Width { get; }

    public double Height { get; }

    public double TextSize { get; }

    /// <summary>The framed field of the curve, in picture units.</summary>
    public Box Plot { get; }

    /// <summary>The strip under the field that shows what carries the spring.</summary>
    public Box Strip => new(Plot.MinX, Plot.MaxY + 38, Plot.MaxX, Plot.MaxY + 66);

    public double TickStepDeg { get; }

    /// <summary>How far a stop's window is drawn to either side of its rest angle.</summary>
    public double WindowReachDeg { get; }

    public IEnumerable<double> AngleTicksDeg => RoundTicks.Between(_firstDeg, _lastDeg, TickStepDeg);

    public IEnumerable<double> MmTicks => RoundTicks.Between(_lowMm, _highMm, RoundTicks.Step((_highMm - _lowMm) / 6));

    public IEnumerable<double> ThouTicks
    {
        get
        {
            double low = _lowMm / Measure.MmPerThou;
            double high = _highMm / Measure.MmPerThou;
            return RoundTicks.Between(low, high, RoundTicks.Step((high - low) / 6));
        }
    }

    /// <summary>Decimals that tell the millimetre ticks apart.</summary>
    public int MmDecimals =>
        Math.Max(0, (int)Math.Ceiling(-Math.Log10(RoundTicks.Step((_highMm - _lowMm) / 6)) - 1e-9));

    public double X(Angle bladeAngle) => X(bladeAngle.Degrees);

    public double X(double deg) => Plot.MinX + ((deg - _firstDeg) / (_lastDeg - _firstDeg) * Plot.WidthMm);

    public double Y(double liftMm) => Plot.MaxY - ((liftMm - _lowMm) / (_highMm - _lowMm) * Plot.HeightMm);

    public Point At(Angle bladeAngle, double liftMm) => new(X(bladeAngle), Y(liftMm));
}
