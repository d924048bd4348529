using System.Globalization;
using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Reports.Pictures;
using Flushback.Reports.Print;

namespace Flushback.Reports.Card;

/// <summary>Draws a card's marks as SVG, a unit a millimetre of paper.</summary>
internal static class CardSvg
{
    private static readonly XNamespace _svg = "http://www.w3.org/2000/svg";

    /// <summary>A picture as tall and wide on paper as it is to be.</summary>
    public static XElement Of(TangPicture picture, string description)
    {
        Pane pane = new(new Box(0, 0, TangPicture.WidthMm, picture.HeightMm), TangPicture.WidthMm);
        Box window = picture.Window;
        Point corner = pane.At(new Point(window.MinX, window.MaxY));

        // An inner picture shows nothing beyond its own frame.
        XElement inside = new(
            _svg + "svg",
            Attribute("x", corner.X),
            Attribute("y", corner.Y),
            Attribute("width", window.WidthMm),
            Attribute("height", window.HeightMm),
            new XAttribute(
                "viewBox",
                $"{Svg.Number(corner.X)} {Svg.Number(corner.Y)} {Svg.Number(window.WidthMm)} {Svg.Number(window.HeightMm)}"
            ),
            picture.Inside().Select(mark => Drawn(mark, pane))
        );
        XElement whole = Svg.Picture(
            "tang",
            pane.Width,
            pane.Height,
            "The tang, four times its size, with the metal to take off",
            description,
            [inside, .. picture.Around().Select(mark => Drawn(mark, pane))]
        );
        whole.Add(
            new XAttribute("width", $"{Svg.Number(pane.Width)}mm"),
            new XAttribute("height", $"{Svg.Number(pane.Height)}mm")
        );
        return whole;
    }

    private static XElement Drawn(CardMark mark, Pane pane) =>
        mark switch
        {
            CardLine line => Path(string.Concat(line.Edges.Select(pane.PathOf)), line.Ink with { Fill = null }),
            CardArea area => Path(pane.PathAround(area.Edges), area.Ink),
            CardWords words => Words(words, pane.At(words.At)),
            _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "No such mark."),
        };

    private static XElement Path(string data, CardInk ink)
    {
        XElement path = new(_svg + "path", new XAttribute("d", data));
        path.Add(new XAttribute("fill", ink.Fill is { } fill ? Hex(fill) : "none"));
        if (ink.Stroke is { } stroke)
        {
            path.Add(
                new XAttribute("stroke", Hex(stroke.Colour)),
                Attribute("stroke-width", stroke.WidthMm),
                new XAttribute("stroke-linejoin", "round")
            );
        }

        return path;
    }

    private static XElement Words(CardWords words, Point at)
    {
        XElement text = new(
            _svg + "text",
            Attribute("x", at.X),
            Attribute("y", at.Y),
            Attribute("font-size", words.SizeMm),
            new XAttribute(
                "text-anchor",
                words.Anchor switch
                {
                    TextAnchor.Middle => "middle",
                    TextAnchor.Right => "end",
                    _ => "start",
                }
            ),
            words.Words
        );
        if (words.IsBold)
        {
            text.Add(new XAttribute("font-weight", "700"));
        }

        if (words.Turn != default)
        {
            text.Add(
                new XAttribute(
                    "transform",
                    $"rotate({Svg.Number(-words.Turn.Degrees)} {Svg.Number(at.X)} {Svg.Number(at.Y)})"
                )
            );
        }

        return text;
    }

    private static XAttribute Attribute(string name, double value) => new(name, Svg.Number(value));

    private static string Hex(PrintColour colour) =>
        string.Create(CultureInfo.InvariantCulture, $"#{colour.Red:x2}{colour.Green:x2}{colour.Blue:x2}");
}
