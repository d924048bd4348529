using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Tolerances;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>How many parts of a study read what: bars over thousandths and millimetres, before the window of the reading.</summary>
public static class SpreadHistogram
{
    private const double Width = 420;
    private const double Height = 330;
    private const double TextSize = 14;
    private const int Bars = 36;
    private const double MostTicks = 6;

    // Readings spread less than this are drawn as one bar, not blown up.
    private const double LeastSpanMm = 0.002;

    private static readonly Box _plot = new(52, 44, 404, 256);

    /// <summary>Draws the histogram of a reading of the dial.</summary>
    /// <param name="report">The study; the knife has this reading.</param>
    /// <param name="outcome">Open height, half stop or closed.</param>
    /// <returns>A complete SVG picture.</returns>
    public static XElement Draw(ToleranceReport report, Outcome outcome)
    {
        Spread spread = report.SpreadOf(outcome)!;
        StopTarget? window = outcome switch
        {
            Outcome.HalfStopLift => report.Settings.Bench.Targets.HalfStop,
            Outcome.ClosedLift => report.Settings.Bench.Targets.Closed,
            _ => null,
        };
        double[] values = [.. report.Parts.Select(part => part.Of(outcome)).OfType<double>()];
        (double low, double high) = RangeOf(spread, window, values);
        int[] counts = CountsOf(values, low, high);
        CurveField field = new(
            new Box(low, 0, high, Math.Max(1, counts.Max()) * 1.08),
            _plot,
            RoundTicks.Step((high - low) / Measure.MmPerThou / MostTicks) * Measure.MmPerThou,
            MostYTicks: 5
        );
        return Svg.Picture(
            $"spread-{outcome.ToString().ToLowerInvariant()}",
            Width,
            Height,
            $"Spread, {ToleranceWords.Of(outcome)}",
            Description(spread),
            [
                .. Frame(field),
                .. window is { } target ? WindowOf(field, target) : [],
                .. BarsOf(field, counts, low, high),
                .. Marks(field, spread),
            ]
        );
    }

    private static (double Low, double High) RangeOf(Spread spread, StopTarget? window, double[] values)
    {
        double[] all =
        [
            spread.AsDrawn,
            .. values.Length > 0 ? [values.Min(), values.Max()] : Array.Empty<double>(),
            .. window is { } target
                ? [target.LiftMm - target.ToleranceMm, target.LiftMm + target.ToleranceMm]
                : Array.Empty<double>(),
        ];
        double middle = (all.Min() + all.Max()) / 2;
        double half = Math.Max(LeastSpanMm, all.Max() - all.Min()) * 0.53;
        return (middle - half, middle + half);
    }

    private static int[] CountsOf(double[] values, double low, double high)
    {
        int[] counts = new int[Bars];
        foreach (double value in values)
        {
            counts[Math.Clamp((int)((value - low) / (high - low) * Bars), 0, Bars - 1)]++;
        }

        return counts;
    }

    private static IEnumerable<XElement> Frame(CurveField field)
    {
        ChartGrid grid = new()
        {
            Sheet = new Box(0, 0, Width, Height),
            Field = field,
            TextSize = TextSize,
            XWords = mm => Measure.Typeset.Number(mm / Measure.MmPerThou, Decimals(field.XStep / Measure.MmPerThou)),
        };
        return
        [
            .. grid.Draw(),
            .. field.XTicks.Select(mm =>
                Svg.Words(
                    Ink.QuietLabel,
                    new Point(field.X(mm), _plot.MaxY + 42),
                    TextSize - 2,
                    Measure.Typeset.Mm(mm),
                    "middle"
                )
            ),
            Svg.Words(Ink.Label, new Point(4, 16), TextSize, "parts"),
            Svg.Words(
                Ink.Label,
                new Point((_plot.MinX + _plot.MaxX) / 2, Height - 8),
                TextSize,
                "thou, and mm below",
                "middle"
            ),
        ];
    }

    private static int Decimals(double step) => Math.Max(0, (int)Math.Ceiling(-Math.Log10(step) - 1e-9));

    private static IEnumerable<XElement> WindowOf(CurveField field, StopTarget target) =>
        [
            Svg.Rectangle(
                Ink.Window,
                new Box(
                    field.X(target.LiftMm - target.ToleranceMm),
                    _plot.MinY,
                    field.X(target.LiftMm + target.ToleranceMm),
                    _plot.MaxY
                )
            ),
        ];

    private static IEnumerable<XElement> BarsOf(CurveField field, int[] counts, double low, double high)
    {
        double wide = (high - low) / Bars;
        for (int i = 0; i < Bars; i++)
        {
            if (counts[i] > 0)
            {
                yield return Svg.Rectangle(
                    Ink.Bar,
                    new Box(
                        field.X(low + (wide * i)) + 0.5,
                        field.Y(counts[i]),
                        field.X(low + (wide * (i + 1))) - 0.5,
                        _plot.MaxY
                    )
                );
            }
        }
    }

    private static IEnumerable<XElement> Marks(CurveField field, Spread spread)
    {
        double x = field.X(spread.AsDrawn);
        yield return Svg.Line(Ink.FlushLine, new Point(x, _plot.MinY - 4), new Point(x, _plot.MaxY));
        yield return Svg.Words(
            Ink.FlushLabel,
            new Point(Math.Clamp(x, _plot.MinX + 30, _plot.MaxX - 30), _plot.MinY - 9),
            TextSize,
            "as drawn",
            "middle"
        );
    }

    private static string Description(Spread spread) =>
        $"As drawn {Measure.Typeset.Reading(spread.AsDrawn)}. "
        + (
            spread.Count == 0
                ? "No part has this reading."
                : $"Mean {Measure.Typeset.Reading(spread.Mean)}, 95 percent of the parts between {Measure.Typeset.Reading(spread.Percentiles[0])} and {Measure.Typeset.Reading(spread.Percentiles[^1])}."
        )
        + (spread.Within is { } within ? $" In the window: {SpreadShare(within.Share)} percent of all parts." : "");

    private static string SpreadShare(double share) => Measure.Typeset.Number(share * 100, 1);
}
