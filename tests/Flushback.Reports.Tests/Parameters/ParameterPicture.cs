using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Reports.Pictures;

namespace Flushback.Reports.Tests.Parameters;

/// <summary>A picture of a real drawing with a letter for each parameter.</summary>
/// <param name="Id">Name of its file.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Window">What is seen, in millimetres of the knife frame.</param>
/// <param name="Parts">Outlines, first drawn first.</param>
/// <param name="Callouts">The letters, in their order.</param>
internal sealed record ParameterPicture(
    string Id,
    string Title,
    Box Window,
    IReadOnlyList<(Ink Ink, Outline Outline)> Parts,
    IReadOnlyList<Callout> Callouts
)
{
    private const double Width = 1000;

    /// <summary>The letter of a callout: A, B, up to Z.</summary>
    public static string LetterOf(int index) => ((char)('A' + index)).ToString();

    public string Write()
    {
        Pane pane = new(Window, Width);
        List<XElement> content = [Svg.Rectangle(Ink.Paper, pane.Sheet)];
        content.AddRange(Parts.Select(part => Svg.Path(part.Ink, pane.PathOf(part.Outline, RigidMotion.Identity))));
        content.AddRange(Callouts.SelectMany((callout, i) => callout.Draw(pane, LetterOf(i))));
        string description = $"{Title}, with a letter for each dimension of the tables.";
        return Svg.Write(Svg.Picture(Id, pane.Sheet.WidthMm, pane.Height, Title, description, content)) + "\n";
    }
}
