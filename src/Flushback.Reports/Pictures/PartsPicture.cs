using System.Globalization;
using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Inspection;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>The sheet as it would be cut: parts, holes, open ends, the middle of the kerf, and the findings where they are.</summary>
public static class PartsPicture
{
    private const double MarginShare = 0.06;
    private const double MarginMm = 2;

    // No picture is taller than this share of its width: a single narrow part lies in the middle of it.
    private const double TallestShare = 1.1;

    // Room for the ruler below the parts, in picture units.
    private const double FootHeight = 34;

    /// <summary>Draws the sheet in the drawing's own frame, findings numbered as in their list.</summary>
    /// <param name="report">An inspection that found something to cut.</param>
    /// <param name="isNarrow">True for a phone: the same drawing with larger marks.</param>
    /// <returns>A complete SVG picture; lines and arcs are drawn as such. Null when there is nothing to draw.</returns>
    public static XElement? Draw(InspectionReport report, bool isNarrow)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (WindowOf(report) is not { } window)
        {
            return null;
        }

        double width = isNarrow ? 420 : 1080;
        double footMm = FootHeight * window.WidthMm / width;
        var pane = new Pane(window with { MinY = window.MinY - footMm }, width);
        return Svg.Picture(
            isNarrow ? "parts-narrow" : "parts",
            pane.Width,
            pane.Height,
            "What would be cut",
            DescriptionOf(report),
            ContentOf(report, pane)
        );
    }

    private static IEnumerable<XElement> ContentOf(InspectionReport report, Pane pane) =>
        [
            Svg.Rectangle(Ink.Paper, pane.Sheet),
            // A part that lies in a hole of another is drawn over it.
            .. report.Parts.OrderByDescending(part => part.Contour.AreaMm2).SelectMany(part => PartOf(part, pane)),
            .. report.CutPaths.Select(path => Svg.Path(Ink.CutPath, PathOf(path.Path, pane))),
            .. report.OpenContours.SelectMany(contour => OpenOf(contour, pane)),
            .. report.Parts.Select((part, i) => NameOf(part, i + 1, pane)),
            .. FindingMarks.Of(report.Findings, pane),
            .. Ruler.Of(pane),
        ];

    private static IEnumerable<XElement> PartOf(InspectedPart part, Pane pane) =>
        [
            Svg.Path(Ink.Metal, PathOf(part.Contour, pane)),
            .. part.Holes.Select(hole => Svg.Path(Ink.Pin, PathOf(hole.Contour, pane))),
        ];

    private static IEnumerable<XElement> OpenOf(OpenContour contour, Pane pane) =>
        [
            .. contour.Edges.Select(edge => Svg.Path(Ink.OpenLine, pane.PathOf(edge))),
            Svg.Disc(Ink.OpenEnd, pane.At(contour.Start), 5),
            Svg.Disc(Ink.OpenEnd, pane.At(contour.End), 5),
        ];

    private static XElement NameOf(InspectedPart part, int number, Pane pane)
    {
        string words = string.Create(CultureInfo.InvariantCulture, $"part {number}");
        Box box = part.Contour.Bounds;

        // Above it: within, the words would lie over holes.
        Point above = pane.At(new Point(box.Centre.X, box.MaxY)) + new Vector(0, -8);
        return Svg.Words(Ink.QuietLabel, above, 16, words, "middle");
    }

    private static string PathOf(Outline outline, Pane pane) => pane.PathOf(outline, RigidMotion.Identity);

    private static Box? WindowOf(InspectionReport report)
    {
        Box box = report
            .Findings.Select(finding => finding.At)
            .OfType<Point>()
            .Aggregate(report.Bounds, (box, at) => box.Including(at));
        box = report.CutPaths.Aggregate(box, (box, path) => box.Including(path.Path.Bounds));
        if (box == Box.Empty)
        {
            return null;
        }

        box = box.Grown((Math.Max(box.WidthMm, box.HeightMm) * MarginShare) + MarginMm);
        double missing = Math.Max((box.HeightMm / TallestShare) - box.WidthMm, 0) / 2;
        return new Box(box.MinX - missing, box.MinY, box.MaxX + missing, box.MaxY);
    }

    private static string DescriptionOf(InspectionReport report) =>
        $"{InspectionWords.Counted(report.Parts.Length, "part")} with {InspectionWords.Counted(report.Parts.Sum(part => part.Holes.Length), "hole")}"
        + $" and {InspectionWords.Counted(report.OpenContours.Length, "open contour")}; the findings are numbered where they are.";
}
