using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>The lift over the rotation: millimetres on the left, thousandths on the right, and below what carries the spring.</summary>
public static class LiftChart
{
    /// <summary>Draws the chart.</summary>
    /// <returns>A complete SVG picture.</returns>
    public static XElement Draw(BenchReport report, ChartShape shape)
    {
        var scale = new ChartScale(report, shape);
        return Svg.Picture(
            shape == ChartShape.Wide ? "lift-chart" : "lift-chart-narrow",
            scale.Width,
            scale.Height,
            "Lift over the rotation",
            Description(report),
            [
                .. Frame(scale),
                .. report.Stops.SelectMany(stop => Window(scale, stop)),
                Svg.Path(
                    Ink.Curve,
                    Svg.Through(report.Curve.Samples.Select(sample => scale.At(sample.BladeAngle, sample.LiftMm)))
                ),
                .. report.Peaks.SelectMany(peak => Peak(scale, peak)),
                .. report.Stops.SelectMany(stop => StopMark(scale, stop)),
                .. CarryingStrip.Of(report, scale),
            ]
        );
    }

    private static IEnumerable<XElement> Frame(ChartScale scale)
    {
        Box plot = scale.Plot;
        double size = scale.TextSize;
        ChartGrid grid = new()
        {
            Sheet = new Box(0, 0, scale.Width, scale.Height),
            Field = scale.Field,
            TextSize = size,
            XWords = deg => Measure.Typeset.Degrees(Angle.FromDegrees(deg), 0),
            RightUnit = Measure.MmPerThou,
        };
        return
        [
            .. grid.Draw(),
            Svg.Line(Ink.FlushLine, new Point(plot.MinX, scale.Y(0)), new Point(plot.MaxX, scale.Y(0))),
            Svg.Words(Ink.Label, new Point(4, size + 2), size, "lift, mm"),
            Svg.Words(Ink.Label, new Point(scale.Width - 4, size + 2), size, "lift, thou", "end"),
        ];
    }

    private static IEnumerable<XElement> Window(ChartScale scale, StopReading stop)
    {
        double left = Math.Max(scale.Plot.MinX, scale.X(stop.RestAngle.Degrees - scale.WindowReachDeg));
        double right = Math.Min(scale.Plot.MaxX, scale.X(stop.RestAngle.Degrees + scale.WindowReachDeg));
        double top = scale.Y(VerdictWords.Ceiling(stop));
        double bottom = scale.Y(VerdictWords.Floor(stop));
        yield return Svg.Rectangle(Ink.Window, new Box(left, top, right, bottom));
    }

    private static IEnumerable<XElement> StopMark(ChartScale scale, StopReading stop)
    {
        double size = scale.TextSize;
        double x = scale.X(stop.RestAngle);
        string anchor =
            x - scale.Plot.MinX < 60 ? "start"
            : scale.Plot.MaxX - x < 60 ? "end"
            : "middle";
        double top = scale.Plot.MinY;
        yield return Svg.Line(Ink.Hairline, new Point(x, top), new Point(x, scale.Plot.MaxY));
        yield return Svg.Disc(Ink.RestPoint, scale.At(stop.RestAngle, stop.LiftMm), 5.5);
        yield return Svg.Words(Ink.StrongLabel, new Point(x, top - size - 8), size, StopNames.Of(stop.Stop), anchor);
        yield return Svg.Words(
            Ink.Label,
            new Point(x, top - 6),
            size,
            stop.Rests ? $"{Measure.Typeset.SignedThou(stop.LiftMm)} thou" : "no rest",
            anchor
        );
    }

    private static IEnumerable<XElement> Peak(ChartScale scale, LiftPeak peak)
    {
        double size = scale.TextSize;
        Point at = scale.At(peak.BladeAngle, peak.LiftMm);
        double x = Math.Clamp(at.X, scale.Plot.MinX + 70, scale.Plot.MaxX - 70);
        yield return Svg.Path(
            Ink.CurvePoint,
            Svg.Through([at, at + new Vector(-6, -11), at + new Vector(6, -11)], closed: true)
        );
        yield return Svg.Words(
            Ink.Label,
            new Point(x, at.Y - 20 - size),
            size,
            $"{Measure.Typeset.SignedThou(peak.LiftMm)} thou",
            "middle"
        );
        yield return Svg.Words(
            Ink.QuietLabel,
            new Point(x, at.Y - 18),
            size,
            $"at {Measure.Typeset.Degrees(peak.BladeAngle, 1)}",
            "middle"
        );
    }

    private static string Description(BenchReport report)
    {
        IEnumerable<string> stops = report.Stops.Select(stop =>
            $"{StopNames.Of(stop.Stop)} {Measure.Typeset.Reading(stop.LiftMm)} at {Measure.Typeset.Degrees(stop.RestAngle)}"
        );
        IEnumerable<string> peaks = report.Peaks.Select(peak =>
            $"{Measure.Typeset.Reading(peak.LiftMm)} at {Measure.Typeset.Degrees(peak.BladeAngle, 1)}"
        );
        IEnumerable<string> carried = CarriedRow
            .Of(report, Measure.Typeset)
            .Select(row => $"{row.Pair} from {row.From} to {row.To}");
        return $"Stops: {string.Join("; ", stops)}. Peaks: {string.Join("; ", peaks)}. Carried by: {string.Join("; ", carried)}.";
    }
}
