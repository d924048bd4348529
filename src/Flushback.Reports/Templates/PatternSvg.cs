using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Patterns;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Templates;

/// <summary>The pieces of a pattern side by side as SVG at their size: a unit is a millimetre, y points down.</summary>
/// <remarks>
/// Lines stay lines and arcs arcs. Each piece is a group by its name; what is cut has the class <c>cut</c>, the finished
/// outline within stock <c>finished</c>, a nick or well <c>mark</c>, and what it is and how many are cut <c>words</c>.
/// Coordinates are rounded to a nanometre.
/// </remarks>
public static class PatternSvg
{
    private const double GapMm = 10;
    private const double EdgeMm = 5;
    private const double WordsBelowMm = 3.5;

    private static readonly XNamespace _svg = "http://www.w3.org/2000/svg";

    /// <summary>Writes the picture; the same input gives the same text.</summary>
    /// <param name="name">What the maker calls the knife.</param>
    /// <param name="pattern">The pattern.</param>
    public static string Write(string name, DrawnPattern pattern)
    {
        PieceLayout layout = PieceLayout.Of(pattern, GapMm);
        Box sheet = layout.Bounds.Grown(EdgeMm);
        XElement picture = new(
            _svg + "svg",
            new XAttribute("width", $"{Number(sheet.WidthMm)}mm"),
            new XAttribute("height", $"{Number(sheet.HeightMm)}mm"),
            new XAttribute("viewBox", $"0 0 {Number(sheet.WidthMm)} {Number(sheet.HeightMm)}"),
            new XElement(_svg + "title", Printable.Of(name)),
            new XElement(
                _svg + "style",
                "path,circle{fill:none;stroke:#000;stroke-width:0.1}.finished{stroke-dasharray:2 1}.mark{stroke-dasharray:1 0.7}.words{font:2.5px sans-serif;fill:#555}"
            ),
            layout.Pieces.Select(piece => GroupOf(piece, pattern, sheet))
        );
        return Text(picture);
    }

    private static XElement GroupOf(LaidPiece piece, DrawnPattern pattern, Box sheet)
    {
        XElement group = new(
            _svg + "g",
            new XAttribute("id", PieceWords.Layer(piece.Piece).ToLowerInvariant().Replace('_', '-'))
        );
        group.Add(PathOf(piece.Cut, sheet, "cut"));
        if (piece.Piece.HasStock)
        {
            group.Add(PathOf(piece.Finished, sheet, "finished"));
        }

        group.Add(piece.Holes.Select(hole => CircleOf(hole.Circle, sheet)));
        group.Add(piece.Marks.Select(mark => PathOf(mark.Outline, sheet, "mark")));
        Box box = piece.Cut.Bounds;
        Point below = At(new Point(box.MinX, box.MinY - WordsBelowMm), sheet);
        group.Add(
            new XElement(
                _svg + "text",
                new XAttribute("class", "words"),
                new XAttribute("x", Number(below.X)),
                new XAttribute("y", Number(below.Y)),
                $"{PieceWords.Name(piece.Piece, pattern)}, {PieceWords.Cut(piece.Piece, inInches: false)}"
            )
        );
        return group;
    }

    private static XElement CircleOf(Circle circle, Box sheet)
    {
        Point at = At(circle.Centre, sheet);
        return new XElement(
            _svg + "circle",
            new XAttribute("class", "cut"),
            new XAttribute("cx", Number(at.X)),
            new XAttribute("cy", Number(at.Y)),
            new XAttribute("r", Number(circle.RadiusMm))
        );
    }

    private static XElement PathOf(Outline outline, Box sheet, string kind)
    {
        StringBuilder data = new();
        Append(data, "M", At(outline.Edges[0].Start, sheet));
        foreach (Edge edge in outline.Edges)
        {
            // Counter-clockwise stays so to the eye; with y down that is sweep 0.
            string command = edge.IsArc
                ? $"A{Number(edge.RadiusMm)} {Number(edge.RadiusMm)} 0 {(Math.Abs(edge.Bulge) > 1 ? 1 : 0)} {(edge.Bulge > 0 ? 0 : 1)} "
                : "L";
            Append(data, command, At(edge.End, sheet));
        }

        return new XElement(
            _svg + "path",
            new XAttribute("class", kind),
            new XAttribute("d", data.Append('Z').ToString())
        );
    }

    private static Point At(Point point, Box sheet) => new(point.X - sheet.MinX, sheet.MaxY - point.Y);

    private static void Append(StringBuilder data, string command, Point to) =>
        data.Append(command).Append(Number(to.X)).Append(' ').Append(Number(to.Y));

    private static string Number(double value)
    {
        string digits = value.ToString("0.######", CultureInfo.InvariantCulture);
        return digits == "-0" ? "0" : digits;
    }

    private static string Text(XElement picture)
    {
        XmlWriterSettings form = new()
        {
            Indent = true,
            IndentChars = "  ",
            NewLineChars = "\n",
            Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
        };
        using MemoryStream bytes = new();
        using (XmlWriter writer = XmlWriter.Create(bytes, form))
        {
            picture.WriteTo(writer);
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }
}
