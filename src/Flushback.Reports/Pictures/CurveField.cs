using Flushback.Geometry;

namespace Flushback.Reports.Pictures;

/// <summary>Where values come to lie in the framed field of a chart, and where its ticks stand.</summary>
/// <param name="Values">What the field holds, in the units of its axes.</param>
/// <param name="Plot">The framed field, in picture units.</param>
/// <param name="XStep">From tick to tick of the lower axis, in its unit.</param>
/// <param name="MostYTicks">At most about so many ticks on an upright axis.</param>
internal sealed record CurveField(Box Values, Box Plot, double XStep, int MostYTicks)
{
    public IEnumerable<double> XTicks => RoundTicks.Between(Values.MinX, Values.MaxX, XStep);

    public IEnumerable<double> YTicks => YTicksOf(1);

    /// <summary>Decimals that tell the ticks apart.</summary>
    public int YDecimals => Math.Max(0, (int)Math.Ceiling(-Math.Log10(YStepOf(1)) - 1e-9));

    /// <summary>Ticks of an upright axis in another unit, in that unit.</summary>
    /// <param name="unit">How much of the field's own unit one of the other is.</param>
    public IEnumerable<double> YTicksOf(double unit) =>
        RoundTicks.Between(Values.MinY / unit, Values.MaxY / unit, YStepOf(unit));

    public double X(double value) => Plot.MinX + ((value - Values.MinX) / Values.WidthMm * Plot.WidthMm);

    public double Y(double value) => Plot.MaxY - ((value - Values.MinY) / Values.HeightMm * Plot.HeightMm);

    public Point At(Point value) => new(X(value.X), Y(value.Y));

    private double YStepOf(double unit) => RoundTicks.Step(Values.HeightMm / unit / MostYTicks);
}
