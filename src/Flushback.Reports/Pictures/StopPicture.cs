using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>A close view of tang and nose with the blade resting at a stop.</summary>
public static class StopPicture
{
    internal const double Width = 560;

    /// <summary>Draws the stop in the knife frame: blade straw, spring blue, contacts numbered as in the tables.</summary>
    /// <returns>A complete SVG picture; lines and arcs of the outlines are drawn as such.</returns>
    /// <exception cref="ArgumentException">When the report has no reading at that stop.</exception>
    public static XElement Draw(BenchReport report, Stop stop)
    {
        StopReading reading =
            report.At(stop) ?? throw new ArgumentException("The report has no reading at this stop.", nameof(stop));
        var pane = new Pane(TangWindow.Of(report), Width);
        return Svg.Picture(
            $"stop-{StopNames.Of(stop).Replace(' ', '-')}",
            pane.Width,
            pane.Height,
            $"Tang and nose {StopNames.At(stop)}",
            Description(report, reading),
            Content(report, reading, pane)
        );
    }

    private static IEnumerable<XElement> Content(BenchReport report, StopReading reading, Pane pane)
    {
        Knife knife = report.Placement.Knife;
        double gridMm = GridStep(pane.Scale);
        return
        [
            Svg.Rectangle(Ink.Paper, pane.Sheet),
            .. Grid(pane, gridMm),
            .. KnifeParts.Handle(pane, knife),
            KnifeParts.Spring(pane, knife, reading.SpringRotation),
            KnifeParts.Blade(pane, knife, reading.RestAngle, Ink.Blade),
            .. KnifeParts.Pins(pane, knife, reading.SpringRotation),
            .. DialMark.Of(report, reading, pane),
            .. reading.Stop == Stop.Open && report.CornerGap is { } gap ? Corner(pane, gap) : [],
            .. ContactMarks.Of(report, reading, pane),
            Svg.Words(Ink.StrongLabel, new Point(14, 30), 22, StopNames.Of(reading.Stop)),
            Svg.Words(Ink.QuietLabel, new Point(14, 54), 18, Rest(reading)),
            Svg.Words(Ink.QuietLabel, new Point(14, pane.Height - 12), 16, $"grid {Svg.Number(gridMm)} mm"),
        ];
    }

    private static IEnumerable<XElement> Corner(Pane pane, CornerGap gap)
    {
        Point at = pane.At(gap.Corner.MidpointTo(gap.Nose));
        double radius = (gap.Corner.DistanceTo(gap.Nose) * pane.Scale / 2) + 6;
        var outward = new Vector(1, 1).Normalized;
        Point leader = at + (outward * (radius + 30));
        string words = $"corner gap {Measure.Typeset.Mm(gap.GapMm, 2)} mm";
        yield return Svg.Disc(Ink.Hairline, at, radius);
        yield return Svg.Line(Ink.Hairline, at + (outward * radius), leader);
        yield return Svg.Words(
            Ink.Label,
            new Point(Math.Min(leader.X + 60, pane.Width - 12), leader.Y + 16),
            18,
            words,
            "end"
        );
    }

    // The finest grid that still reads as a grid and not as a tint.
    private static double GridStep(double scale) =>
        new double[] { 0.5, 1, 2, 5, 10, 20, 50 }.FirstOrDefault(step => step * scale >= 16, 100);

    private static IEnumerable<XElement> Grid(Pane pane, double stepMm)
    {
        Box window = pane.Window;
        for (double x = Math.Ceiling(window.MinX / stepMm) * stepMm; x < window.MaxX; x += stepMm)
        {
            yield return Svg.Line(Ink.Grid, pane.At(new Point(x, window.MaxY)), pane.At(new Point(x, window.MinY)));
        }

        for (double y = Math.Ceiling(window.MinY / stepMm) * stepMm; y < window.MaxY; y += stepMm)
        {
            yield return Svg.Line(Ink.Grid, pane.At(new Point(window.MinX, y)), pane.At(new Point(window.MaxX, y)));
        }
    }

    private static string Rest(StopReading reading) =>
        reading.Rests
            ? $"rests at {Measure.Typeset.Degrees(reading.RestAngle)}"
            : $"no rest, shown at {Measure.Typeset.Degrees(reading.RestAngle)}";

    private static string Description(BenchReport report, StopReading reading)
    {
        StopRow row = StopRow.Of(report, reading, Measure.Typeset);
        IEnumerable<string> contacts = row.Contacts.Select(contact =>
            $"Contact {Svg.Number(contact.Number)}: {contact.Pair}."
        );
        return $"The dial reads {row.Thou} thou. {row.Standing} {string.Join(" ", contacts)}".TrimEnd();
    }
}
