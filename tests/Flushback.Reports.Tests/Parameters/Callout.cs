using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Reports.Pictures;

namespace Flushback.Reports.Tests.Parameters;

/// <summary>A letter on a picture: what it stands for, and how it points there. Places are millimetres of the knife frame.</summary>
/// <param name="Paths">The parameters it stands for, as in the table of them.</param>
internal abstract record Callout(params string[] Paths)
{
    private const double RadiusMm = 9;

    /// <summary>Draws it on a pane.</summary>
    public abstract IEnumerable<XElement> Draw(Pane pane, string letter);

    protected static IEnumerable<XElement> Bubble(Point at, string letter) =>
        [Svg.Disc(Ink.Paper, at, RadiusMm), Svg.Words(Ink.StrongLabel, at + new Vector(0, 5.5), 16, letter, "middle")];
}

/// <summary>A dimension line between two places, moved aside, with witness lines to them.</summary>
internal sealed record Span(string Path, Point From, Point To, Vector Aside) : Callout(Path)
{
    private const double Arrow = 10;

    public override IEnumerable<XElement> Draw(Pane pane, string letter)
    {
        Point from = pane.At(From);
        Point to = pane.At(To);
        Vector aside = Pane.Along(Aside) * pane.Scale;
        Point start = from + aside;
        Point end = to + aside;
        yield return Svg.Line(Ink.Hairline, from, start);
        yield return Svg.Line(Ink.Hairline, to, end);
        yield return Svg.Line(Ink.Axis, start, end);
        foreach ((Point tip, Vector inward) in new[] { (start, end - start), (end, start - end) })
        {
            Vector along = inward.Normalized * Arrow;
            Vector half = along.Left * 0.4;
            yield return Svg.Path(
                Ink.RestPoint,
                Svg.Through([tip, tip + along + half, tip + along - half], closed: true)
            );
        }

        foreach (XElement element in Bubble(start.MidpointTo(end), letter))
        {
            yield return element;
        }
    }
}

/// <summary>A line from a letter to the place it speaks of.</summary>
internal sealed record Leader(Point At, Vector Away, params string[] Paths) : Callout(Paths)
{
    public override IEnumerable<XElement> Draw(Pane pane, string letter)
    {
        Point place = pane.At(At);
        Point away = place + (Pane.Along(Away) * pane.Scale);
        yield return Svg.Line(Ink.Axis, place, away);
        yield return Svg.Disc(Ink.RestPoint, place, 3);
        foreach (XElement element in Bubble(away, letter))
        {
            yield return element;
        }
    }
}
