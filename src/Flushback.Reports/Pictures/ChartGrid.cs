using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>What every chart has in common: its sheet, a grid with ticks and their numbers, and the axes.</summary>
internal sealed record ChartGrid
{
    /// <summary>The whole picture.</summary>
    public required Box Sheet { get; init; }

    /// <summary>The framed field.</summary>
    public required CurveField Field { get; init; }

    /// <summary>Size of the type.</summary>
    public required double TextSize { get; init; }

    /// <summary>Puts a tick of the lower axis into words.</summary>
    public required Func<double, string> XWords { get; init; }

    /// <summary>Unit of a second upright axis on the right, in units of the left one; null for none.</summary>
    public double? RightUnit { get; init; }

    public IEnumerable<XElement> Draw() =>
        [Svg.Rectangle(Ink.Paper, Sheet), .. LeftAxis(), .. RightAxis(), .. LowerAxis()];

    private Box Plot => Field.Plot;

    private IEnumerable<XElement> LeftAxis()
    {
        foreach (double tick in Field.YTicks)
        {
            double y = Field.Y(tick);
            yield return Svg.Line(Ink.Grid, new Point(Plot.MinX, y), new Point(Plot.MaxX, y));
            yield return Words(new Point(Plot.MinX - 9, y), Measure.Typeset.Number(tick, Field.YDecimals), "end");
        }

        yield return Svg.Line(Ink.Axis, new Point(Plot.MinX, Plot.MinY), new Point(Plot.MinX, Plot.MaxY));
    }

    private IEnumerable<XElement> RightAxis()
    {
        if (RightUnit is not { } unit)
        {
            yield break;
        }

        foreach (double tick in Field.YTicksOf(unit))
        {
            double y = Field.Y(tick * unit);
            yield return Svg.Line(Ink.Axis, new Point(Plot.MaxX, y), new Point(Plot.MaxX + 5, y));
            yield return Words(new Point(Plot.MaxX + 10, y), Measure.Typeset.Number(tick, 0), "start");
        }

        yield return Svg.Line(Ink.Axis, new Point(Plot.MaxX, Plot.MinY), new Point(Plot.MaxX, Plot.MaxY));
    }

    private IEnumerable<XElement> LowerAxis()
    {
        foreach (double tick in Field.XTicks)
        {
            double x = Field.X(tick);
            yield return Svg.Line(Ink.Grid, new Point(x, Plot.MinY), new Point(x, Plot.MaxY));
            yield return Svg.Line(Ink.Axis, new Point(x, Plot.MaxY), new Point(x, Plot.MaxY + 5));
            yield return Words(new Point(x, Plot.MaxY + 9 + (TextSize * 2 / 3)), XWords(tick), "middle");
        }

        yield return Svg.Line(Ink.Axis, new Point(Plot.MinX, Plot.MaxY), new Point(Plot.MaxX, Plot.MaxY));
    }

    // A third of the type's size puts its middle at the height of the place.
    private XElement Words(Point middle, string words, string anchor) =>
        Svg.Words(Ink.QuietLabel, middle + new Vector(0, TextSize / 3), TextSize, words, anchor);
}
