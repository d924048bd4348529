using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using Flushback.Geometry;

namespace Flushback.Reports.Pictures;

/// <summary>The few SVG elements the pictures are made of; coordinates in the picture's own units, y down.</summary>
internal static class Svg
{
    private static readonly XNamespace Namespace = "http://www.w3.org/2000/svg";

    /// <summary>A picture with a title and a description that a screen reader reads out.</summary>
    /// <param name="id">Unique on the page.</param>
    /// <param name="width">Width in the picture's units.</param>
    /// <param name="height">Height in the picture's units.</param>
    /// <param name="title">What it shows, in a few words.</param>
    /// <param name="description">What is to be seen on it, for who does not see it.</param>
    /// <param name="content">Elements, first drawn first.</param>
    public static XElement Picture(
        string id,
        double width,
        double height,
        string title,
        string description,
        IEnumerable<XElement> content
    ) =>
        new(
            Namespace + "svg",
            new XAttribute("id", id),
            new XAttribute("viewBox", $"0 0 {Number(width)} {Number(height)}"),
            new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", $"{id}-title {id}-desc"),
            new XElement(Namespace + "title", new XAttribute("id", $"{id}-title"), title),
            new XElement(Namespace + "desc", new XAttribute("id", $"{id}-desc"), description),
            content
        );

    public static XElement Rectangle(Ink ink, Box box, double corner = 0) =>
        Element(
            "rect",
            ink,
            ("x", box.MinX),
            ("y", box.MinY),
            ("width", box.WidthMm),
            ("height", box.HeightMm),
            ("rx", corner)
        );

    public static XElement Line(Ink ink, Point from, Point to) =>
        Element("line", ink, ("x1", from.X), ("y1", from.Y), ("x2", to.X), ("y2", to.Y));

    public static XElement Disc(Ink ink, Point centre, double radius) =>
        Element("circle", ink, ("cx", centre.X), ("cy", centre.Y), ("r", radius));

    public static XElement Path(Ink ink, string data)
    {
        XElement path = Element("path", ink);
        path.Add(new XAttribute("d", data));
        return path;
    }

    /// <summary>Straight lines through points.</summary>
    public static string Through(IEnumerable<Point> points, bool closed = false) =>
        "M" + string.Join("L", points.Select(point => $"{Number(point.X)} {Number(point.Y)}")) + (closed ? "Z" : "");

    /// <summary>Words at a place; the anchor is <c>start</c>, <c>middle</c> or <c>end</c>.</summary>
    public static XElement Words(Ink ink, Point at, double size, string words, string anchor = "start")
    {
        XElement text = Element("text", ink, ("x", at.X), ("y", at.Y), ("font-size", size));
        text.Add(new XAttribute("text-anchor", anchor), words);
        return text;
    }

    /// <summary>A coordinate: two decimals at most, the same bytes on every machine.</summary>
    public static string Number(double value)
    {
        string digits = value.ToString("0.##", CultureInfo.InvariantCulture);
        return digits == "-0" ? "0" : digits;
    }

    /// <summary>The element as text, indented, lines ended by a line feed.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="idPrefix">What its ids are to begin with, where the page has another such picture.</param>
    public static string Write(XElement picture, string idPrefix = "")
    {
        foreach (XAttribute id in picture.DescendantsAndSelf().Attributes("id"))
        {
            id.Value = idPrefix + id.Value;
        }

        if (picture.Attribute("aria-labelledby") is { } labels)
        {
            labels.Value = string.Join(' ', labels.Value.Split(' ').Select(id => idPrefix + id));
        }

        var text = new StringBuilder();
        var format = new XmlWriterSettings
        {
            Indent = true,
            IndentChars = "  ",
            NewLineChars = "\n",
            OmitXmlDeclaration = true,
        };
        using (var writer = XmlWriter.Create(text, format))
        {
            picture.WriteTo(writer);
        }

        return text.ToString();
    }

    private static XElement Element(string name, Ink ink, params ReadOnlySpan<(string Name, double Value)> attributes)
    {
        var element = new XElement(Namespace + name, ink.Attributes);
        foreach ((string attribute, double value) in attributes)
        {
            element.Add(new XAttribute(attribute, Number(value)));
        }

        return element;
    }
}
