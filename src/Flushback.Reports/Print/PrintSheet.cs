using System.Collections.Immutable;
using Flushback.Geometry;
using PdfSharp.Drawing;

namespace Flushback.Reports.Print;

/// <summary>One sheet of paper and what is drawn on it, first drawn first. Not for two threads at once.</summary>
/// <remarks>
/// Places are millimetres from the lower left corner of the sheet, y up. Lines and circles are where they are said to be
/// to 0.02 micrometres, arcs to <see cref="LargestErrorMm"/>. Nothing is drawn before <see cref="PdfFile.Write"/>.
/// </remarks>
public sealed class PrintSheet(SheetFormat format)
{
    /// <summary>Farthest that anything drawn may lie from its exact place on paper, in millimetres.</summary>
    public const double LargestErrorMm = 0.001;

    private readonly List<Action<XGraphics>> _marks = [];
    private readonly PaperPlaces _places = new(format);

    /// <summary>The paper, and which way it is turned.</summary>
    public SheetFormat Format { get; } = format;

    /// <summary>Draws a straight line.</summary>
    public void Line(Point from, Point to, Stroke stroke) => Edges([new Edge(from, to)], stroke);

    /// <summary>Draws lines and arcs that follow one another; a new piece begins where one does not start at the last one's end.</summary>
    public void Edges(IEnumerable<Edge> edges, Stroke stroke)
    {
        ImmutableArray<Edge> drawn = [.. edges];
        Draw(page => page.DrawPath(PenOf(stroke), _places.PathOf([drawn], isClosed: false)));
    }

    /// <summary>Draws the outline of a rectangle, fills it, or both.</summary>
    public void Rectangle(Box box, Stroke? stroke, Fill? fill = null)
    {
        Point lowerRight = new(box.MaxX, box.MinY);
        Point upperLeft = new(box.MinX, box.MaxY);
        Point lowerLeft = new(box.MinX, box.MinY);
        Point upperRight = new(box.MaxX, box.MaxY);
        Region(
            [
                [
                    new Edge(lowerLeft, lowerRight),
                    new Edge(lowerRight, upperRight),
                    new Edge(upperRight, upperLeft),
                    new Edge(upperLeft, lowerLeft),
                ],
            ],
            stroke,
            fill
        );
    }

    /// <summary>Draws a circle, fills it, or both.</summary>
    public void Circle(Circle circle, Stroke? stroke, Fill? fill = null)
    {
        Vector right = new(circle.RadiusMm, 0);
        Point east = circle.Centre + right;
        Point west = circle.Centre - right;
        Region(
            [
                [new Edge(east, west, 1), new Edge(west, east, 1)],
            ],
            stroke,
            fill
        );
    }

    /// <summary>
    /// Draws closed contours, fills what lies in an odd number of them, or both: a contour within another is a hole.
    /// </summary>
    /// <param name="contours">Each a closed chain of edges, in either direction.</param>
    /// <param name="stroke">How the contours are drawn; null for not at all.</param>
    /// <param name="fill">How the inside is filled; null for not at all.</param>
    public void Region(IEnumerable<IEnumerable<Edge>> contours, Stroke? stroke, Fill? fill = null)
    {
        ImmutableArray<ImmutableArray<Edge>> drawn = [.. contours.Select(contour => contour.ToImmutableArray())];
        Draw(page =>
        {
            XGraphicsPath path = _places.PathOf(drawn, isClosed: true);
            if (fill?.Colour is PrintColour colour)
            {
                page.DrawPath(new XSolidBrush(ColourOf(colour)), path);
            }

            if (fill?.Hatch is Hatch hatch)
            {
                DrawHatch(page, hatch, path, drawn);
            }

            if (stroke is not null)
            {
                page.DrawPath(PenOf(stroke), path);
            }
        });
    }

    /// <summary>Sets a line of words.</summary>
    /// <param name="at">The point of the base line that <paramref name="anchor"/> names.</param>
    /// <param name="words">The words, on one line.</param>
    /// <param name="style">How they are set.</param>
    /// <param name="anchor">Which point of the base line the place is.</param>
    /// <param name="turn">By how much they are turned counter-clockwise about that point.</param>
    public void Text(
        Point at,
        string words,
        TextStyle style,
        TextAnchor anchor = TextAnchor.Left,
        Angle turn = default
    ) =>
        Draw(page =>
        {
            XPoint place = _places.Of(at);
            XGraphicsState before = page.Save();
            page.RotateAtTransform(-turn.Degrees, place);
            page.DrawString(
                words,
                PrintFonts.FontOf(style),
                new XSolidBrush(ColourOf(style.Colour)),
                place,
                FormatOf(anchor)
            );
            page.Restore(before);
        });

    /// <summary>Draws what is seen through a window: nothing of it beyond.</summary>
    /// <param name="window">The window, in millimetres of the sheet.</param>
    /// <param name="content">Draws on the sheet it is given, which has the same frame as this one.</param>
    public void Within(Box window, Action<PrintSheet> content)
    {
        ArgumentNullException.ThrowIfNull(content);
        PrintSheet inside = new(Format);
        content(inside);
        Draw(page =>
        {
            XGraphicsState before = page.Save();
            page.IntersectClip(_places.Of(window));
            inside.DrawOn(page);
            page.Restore(before);
        });
    }

    /// <summary>Draws everything, on a page of this format with points as its unit.</summary>
    internal void DrawOn(XGraphics page)
    {
        foreach (Action<XGraphics> mark in _marks)
        {
            mark(page);
        }
    }

    private void Draw(Action<XGraphics> mark) => _marks.Add(mark);

    private void DrawHatch(
        XGraphics page,
        Hatch hatch,
        XGraphicsPath region,
        ImmutableArray<ImmutableArray<Edge>> contours
    )
    {
        Box box = contours
            .SelectMany(contour => contour)
            .Aggregate(Box.Empty, (all, edge) => all.Including(edge.Bounds));
        XGraphicsState before = page.Save();
        page.IntersectClip(region);
        XPen pen = PenOf(hatch.Stroke);
        foreach (Edge line in HatchLines.Across(box, hatch))
        {
            page.DrawLine(pen, _places.Of(line.Start), _places.Of(line.End));
        }

        page.Restore(before);
    }

    private static XPen PenOf(Stroke stroke)
    {
        XPen pen = new(ColourOf(stroke.Colour), PaperPlaces.PointsOf(stroke.WidthMm))
        {
            LineCap = XLineCap.Flat,
            LineJoin = XLineJoin.Round,
        };
        if (!stroke.DashesMm.IsDefaultOrEmpty)
        {
            // Counted in widths of the pen.
            pen.DashPattern = [.. stroke.DashesMm.Select(length => length / stroke.WidthMm)];
        }

        return pen;
    }

    private static XColor ColourOf(PrintColour colour) => XColor.FromArgb(colour.Red, colour.Green, colour.Blue);

    private static XStringFormat FormatOf(TextAnchor anchor) =>
        anchor switch
        {
            TextAnchor.Middle => XStringFormats.BaseLineCenter,
            TextAnchor.Right => XStringFormats.BaseLineRight,
            _ => XStringFormats.BaseLineLeft,
        };
}
