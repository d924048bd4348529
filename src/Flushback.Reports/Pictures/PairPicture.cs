using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Patterns.Pairs;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>Two blades in their handle, the first in front, and where they come nearest.</summary>
internal static class PairPicture
{
    private const double Width = 960;
    private const double MarginMm = 2;

    // Room for two lines of words above and the ruler below, in picture units; a phone shows them larger.
    private const double HeadHeight = 104;
    private const double FootHeight = 76;

    /// <summary>Draws the blades.</summary>
    /// <param name="pose">Where they are.</param>
    /// <param name="id">Unique on the page.</param>
    /// <param name="title">What they do.</param>
    /// <param name="nearest">The place to mark, where they are nearest in this pose.</param>
    /// <returns>A complete SVG picture; lines and arcs of the outlines are drawn as such.</returns>
    public static XElement Draw(PairPose pose, string id, string title, ClearanceCase? nearest)
    {
        Box knife = WindowOf(pose).Grown(MarginMm);
        double mm = knife.WidthMm / Width;
        Pane pane = new(
            knife with
            {
                MaxY = knife.MaxY + (HeadHeight * mm),
                MinY = knife.MinY - (FootHeight * mm),
            },
            Width
        );
        string apart = nearest is { } near ? Apart(near) : "";
        return Svg.Picture(
            id,
            pane.Width,
            pane.Height,
            $"Both blades: {title}",
            $"The first blade at {Measure.Typeset.Degrees(pose.First, 1)}, the second at {Measure.Typeset.Degrees(pose.Second, 1)}, in the handle with their {(pose.IsShared ? "spring" : "springs")}. {apart}".TrimEnd(),
            [
                Svg.Rectangle(Ink.Paper, pane.Sheet),
                .. Parts(pose, pane),
                .. nearest is { } place ? Ring(place, pane) : [],
                Svg.Words(Ink.StrongLabel, new Point(16, 44), 24, title),
                Svg.Words(Ink.Label, new Point(16, 90), 22, apart),
                .. Ruler.Of(pane),
            ]
        );
    }

    /// <summary>Handle, springs, blades and pins; what lies behind the first blade and its spring in broken lines.</summary>
    public static IEnumerable<XElement> Parts(PairPose pose, Pane pane)
    {
        DrawnPair pair = pose.Pair;
        string firstBlade = pane.PathOf(pair.First.Knife.Blade, pose.FirstBlade);
        string secondBlade = pane.PathOf(pair.Second.Knife.Blade, pose.SecondBlade);
        if (pose.IsShared)
        {
            return
            [
                .. KnifeParts.Handle(pane, pair.First.Knife),
                Svg.Path(Ink.Spring, pane.PathAround(pose.SharedSpring)),
                Svg.Path(Ink.SecondBlade, secondBlade),
                Svg.Path(Ink.Blade, firstBlade),
                Svg.Path(Ink.Hidden, secondBlade),
                .. pose.Pins.SelectMany(pin => KnifeParts.Pin(pane, pin)),
            ];
        }

        string secondSpring = pane.PathOf(pair.Second.Knife.Spring, pose.SecondSpring);
        return
        [
            .. KnifeParts.Handle(pane, pair.First.Knife),
            Svg.Path(Ink.Spring, secondSpring),
            Svg.Path(Ink.SecondBlade, secondBlade),
            Svg.Path(Ink.Spring, pane.PathOf(pair.First.Knife.Spring, pose.FirstSpring)),
            Svg.Path(Ink.Blade, firstBlade),
            Svg.Path(Ink.Hidden, secondSpring),
            Svg.Path(Ink.Hidden, secondBlade),
            .. pose.Pins.SelectMany(pin => KnifeParts.Pin(pane, pin)),
        ];
    }

    /// <summary>How far apart the blades are, in words.</summary>
    public static string Apart(ClearanceCase nearest) =>
        nearest.Overlaps
            ? "in the plane they overlap"
            : $"{Measure.Typeset.Length(nearest.DistanceMm)} apart in the plane";

    private static IEnumerable<XElement> Ring(ClearanceCase nearest, Pane pane)
    {
        Point middle = pane.At(nearest.At.MidpointTo(nearest.OnSecond));
        yield return Svg.Line(Ink.ContactLine, pane.At(nearest.At), pane.At(nearest.OnSecond));
        yield return Svg.Disc(Ink.Ring, middle, Math.Max(16, (nearest.DistanceMm * pane.Scale / 2) + 8));
    }

    private static Box WindowOf(PairPose pose)
    {
        DrawnPair pair = pose.Pair;
        IEnumerable<Outline> parts =
        [
            pair.First.Handle.Finished,
            pair.First.Knife.Blade.Transformed(pose.FirstBlade),
            pair.Second.Knife.Blade.Transformed(pose.SecondBlade),
            pair.First.Knife.Spring.Transformed(pose.FirstSpring),
            pair.Second.Knife.Spring.Transformed(pose.SecondSpring),
        ];
        return parts.Aggregate(Box.Empty, (box, part) => box.Including(part.Bounds));
    }
}
