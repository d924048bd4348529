using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Patterns.Pairs;

namespace Flushback.Reports.Pictures;

/// <summary>A close view of where two blades come nearest in the plane.</summary>
internal static class GapPicture
{
    private const double Width = 560;
    private const double Aspect = 4.0 / 3;

    // The gap takes a sixth of the width, but what is seen is never less than this across.
    private const double GapShare = 6;
    private const double LeastMm = 3;

    /// <summary>Draws the place; the blades do not overlap there.</summary>
    /// <returns>A complete SVG picture; lines and arcs of the outlines are drawn as such.</returns>
    public static XElement Draw(PairPose pose, ClearanceCase nearest)
    {
        double across = Math.Max(GapShare * nearest.DistanceMm, LeastMm);
        Point middle = nearest.At.MidpointTo(nearest.OnSecond);
        Box window = new(
            middle.X - (across / 2),
            middle.Y - (across / Aspect / 2),
            middle.X + (across / 2),
            middle.Y + (across / Aspect / 2)
        );
        Pane pane = new(window, Width);
        string apart = PairPicture.Apart(nearest);
        return Svg.Picture(
            "gap",
            pane.Width,
            pane.Height,
            "Where the blades come nearest",
            $"The blades {apart}.",
            [
                Svg.Rectangle(Ink.Paper, pane.Sheet),
                .. PairPicture.Parts(pose, pane),
                Svg.Line(Ink.ContactLine, pane.At(nearest.At), pane.At(nearest.OnSecond)),
                Svg.Disc(Ink.Contact, pane.At(nearest.At), 6),
                Svg.Disc(Ink.Contact, pane.At(nearest.OnSecond), 6),
                Svg.Words(Ink.StrongLabel, new Point(14, 30), 20, apart),
                .. Ruler.Of(pane),
            ]
        );
    }
}
