using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>The whole knife: the blade open, and its other stops in phantom lines as on a shop drawing.</summary>
public static class KnifePicture
{
    private const double Width = 960;
    private const double MarginMm = 4;

    /// <summary>Draws the knife in the knife frame, with its handle where one was given.</summary>
    /// <returns>A complete SVG picture; lines and arcs of the outlines are drawn as such.</returns>
    public static XElement Draw(BenchReport report)
    {
        Knife knife = report.Placement.Knife;
        var pane = new Pane(WindowOf(report), Width);
        return Svg.Picture(
            "whole-knife",
            pane.Width,
            pane.Height,
            "The whole knife at its stops",
            "The blade open, drawn full; its other stops in broken lines; the spring above the tang"
                + (knife.Handle is null ? "; no handle was given." : "; the handle behind."),
            Content(report, pane)
        );
    }

    private static IEnumerable<XElement> Content(BenchReport report, Pane pane)
    {
        Knife knife = report.Placement.Knife;
        StopReading shown = report.Stops[0];
        return
        [
            Svg.Rectangle(Ink.Paper, pane.Sheet),
            .. KnifeParts.Handle(pane, knife),
            Svg.Path(Ink.Hairline, pane.PathOf(TipPath(report))),
            KnifeParts.Spring(pane, knife, shown.SpringRotation),
            KnifeParts.Blade(pane, knife, shown.RestAngle, Ink.Blade),
            .. report.Stops.Skip(1).Select(stop => KnifeParts.Blade(pane, knife, stop.RestAngle, Ink.Phantom)),
            .. KnifeParts.Pins(pane, knife, shown.SpringRotation),
            .. report.Stops.Select(stop => Name(report, pane, stop)),
            .. Ruler.Of(pane),
        ];
    }

    private static XElement Name(BenchReport report, Pane pane, StopReading stop)
    {
        (Point at, string anchor) = NamePlace(report, stop);
        return Svg.Words(Ink.Label, pane.At(at) + new Vector(0, 6), 18, StopNames.Of(stop.Stop), anchor);
    }

    private static (Point At, string Anchor) NamePlace(BenchReport report, StopReading stop)
    {
        Box blade = BladeBox(report.Placement.Knife, stop);
        return stop.Stop switch
        {
            Stop.Open => (blade.Centre, "middle"),
            Stop.HalfStop => (new Point(blade.MaxX + 2, blade.Centre.Y), "start"),
            _ => (new Point(blade.Centre.X, Math.Min(blade.MinY, HandleBox(report).MinY) - 5), "middle"),
        };
    }

    // The tip is the blade's farthest corner from the pin; clockwise from the first stop to the last.
    private static Edge TipPath(BenchReport report)
    {
        Point tip = report
            .Placement.Knife.Blade.Edges.Select(edge => edge.Start)
            .MaxBy(corner => (corner - Point.Origin).LengthSquared);
        Angle first = report.Stops[0].RestAngle;
        Angle last = report.Stops[^1].RestAngle;
        return Edge.Arc(Knife.BladeAt(first).Apply(tip), Knife.BladeAt(last).Apply(tip), first - last);
    }

    private static Box WindowOf(BenchReport report)
    {
        Knife knife = report.Placement.Knife;
        Box parts = report.Stops.Aggregate(
            knife.Spring.Bounds.Including(HandleBox(report)),
            (box, stop) => box.Including(BladeBox(knife, stop))
        );
        Box words = report.Stops.Aggregate(parts, (box, stop) => box.Including(NamePlace(report, stop).At));
        return words.Grown(MarginMm);
    }

    private static Box HandleBox(BenchReport report) => report.Placement.Knife.Handle?.Bounds ?? Box.Empty;

    private static Box BladeBox(Knife knife, StopReading stop) =>
        knife.Blade.Transformed(Knife.BladeAt(stop.RestAngle)).Bounds;
}
