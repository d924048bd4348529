using Flushback.Geometry;

namespace Flushback.Reports.Pictures;

/// <summary>Where the points of a curve come to lie in a framed field, and where its ticks stand.</summary>
internal sealed class CurveField
{
    private readonly Box _values;
    private readonly double _yStep;
    private readonly double _xStep;

    private CurveField(Box values, ChartShape shape)
    {
        bool isWide = shape == ChartShape.Wide;
        Width = isWide ? 1000 : 420;
        Height = isWide ? 360 : 340;
        TextSize = isWide ? 16 : 14.5;
        Plot = isWide ? new Box(82, 56, 976, 316) : new Box(58, 56, 404, 296);
        double margin = 0.06 * Math.Max(values.HeightMm, 1e-9);
        _values = values with { MinY = values.MinY - margin, MaxY = values.MaxY + margin };
        _yStep = RoundTicks.Step(_values.HeightMm / 5);
        _xStep = values.WidthMm > 90 ? (isWide ? 15 : 45) : RoundTicks.Step(values.WidthMm / (isWide ? 8 : 4));
    }

    public double Width { get; }

    public double Height { get; }

    public double TextSize { get; }

    /// <summary>The framed field, in picture units.</summary>
    public Box Plot { get; }

    public IEnumerable<double> XTicks => RoundTicks.Between(_values.MinX, _values.MaxX, _xStep);

    public IEnumerable<double> YTicks => RoundTicks.Between(_values.MinY, _values.MaxY, _yStep);

    /// <summary>Decimals that tell the ticks apart.</summary>
    public int YDecimals => Math.Max(0, (int)Math.Ceiling(-Math.Log10(_yStep) - 1e-9));

    /// <summary>A field that holds all points, and zero.</summary>
    public static CurveField Around(IEnumerable<Point> points, ChartShape shape)
    {
        Box box = points.Aggregate(Box.Empty, (all, point) => all.Including(point));
        return new CurveField(box with { MinY = Math.Min(0, box.MinY), MaxY = Math.Max(0, box.MaxY) }, shape);
    }

    public Point At(Point value) =>
        new(
            Plot.MinX + ((value.X - _values.MinX) / _values.WidthMm * Plot.WidthMm),
            Plot.MaxY - ((value.Y - _values.MinY) / _values.HeightMm * Plot.HeightMm)
        );
}
