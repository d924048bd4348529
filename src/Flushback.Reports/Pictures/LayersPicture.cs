using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Patterns.Pairs;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>The layers of a knife of two blades, cut across: springs, blades, the liner between, and the room between the blades.</summary>
/// <remarks>On a shared spring each blade lies against its own liner, on two springs in the middle of its own.</remarks>
internal static class LayersPicture
{
    private const double Width = 560;

    // Heights in shares of the width of all layers; only widths are to scale.
    private const double SpringShare = 0.2;
    private const double BladeShare = 0.42;
    private const double BesideShare = 0.3;
    private const double WordsShare = 0.22;
    private const double LinerShare = 0.08;

    /// <summary>Draws the layers, the first blade on the left.</summary>
    /// <returns>A complete SVG picture.</returns>
    public static XElement Draw(DrawnPair pair)
    {
        (Box first, Box second, Box between, double width) = Layers(pair.Parameters);
        double beside = BesideShare * width;
        Box window = new(
            -beside,
            -(BladeShare + WordsShare) * width,
            width + beside,
            (SpringShare + (WordsShare / 2)) * width
        );
        Pane pane = new(window, Width);
        string apart = Apart(pair.Clearance.SidewaysMm);
        return Svg.Picture(
            "layers",
            pane.Width,
            pane.Height,
            "Across the knife",
            $"Sideways the blades {apart}; {Measure.Typeset.Length(pair.Clearance.LeastMm)} is wanted.",
            [
                Svg.Rectangle(Ink.Paper, pane.Sheet),
                .. Liners(pair, pane, width, between),
                .. Springs(pair, pane, width, between),
                Svg.Rectangle(Ink.SecondBlade, On(pane, second)),
                Svg.Rectangle(Ink.Blade, On(pane, first)),
                .. Room(pane, first, second, width, apart),
                Svg.Words(Ink.StripLabel, pane.At(first.Centre), 18, "first", "middle"),
                Svg.Words(Ink.StripLabel, pane.At(second.Centre), 18, "second", "middle"),
            ]
        );
    }

    private static (Box First, Box Second, Box Between, double Width) Layers(PairParameters page)
    {
        double spring = page.First.Spring.WidthMm;
        (double one, double two) = (page.Second.FirstThicknessMm, page.Second.ThicknessMm);
        bool isShared = page.Arrangement == Arrangement.SharedSpring;
        double liner = isShared ? 0 : page.Second.LinerBetweenMm;
        double width = isShared ? spring : (2 * spring) + liner;
        double left = isShared ? 0 : (spring - one) / 2;
        double right = isShared ? width - two : width - ((spring + two) / 2);
        double low = -BladeShare * width;
        return (
            new Box(left, low, left + one, 0),
            new Box(right, low, right + two, 0),
            new Box(spring, low, spring + liner, SpringShare * width),
            width
        );
    }

    private static IEnumerable<XElement> Liners(DrawnPair pair, Pane pane, double width, Box between)
    {
        double liner = LinerShare * width;
        (double low, double high) = (-BladeShare * width, SpringShare * width);
        yield return Svg.Rectangle(Ink.Handle, On(pane, new Box(-liner, low, 0, high)));
        yield return Svg.Rectangle(Ink.Handle, On(pane, new Box(width, low, width + liner, high)));
        if (pair.Parameters.Arrangement == Arrangement.TwoSprings)
        {
            yield return Svg.Rectangle(Ink.Handle, On(pane, between));
        }
    }

    private static IEnumerable<XElement> Springs(DrawnPair pair, Pane pane, double width, Box between)
    {
        double high = SpringShare * width;
        if (pair.Parameters.Arrangement == Arrangement.SharedSpring)
        {
            yield return Svg.Rectangle(Ink.Spring, On(pane, new Box(0, 0, width, high)));
            yield break;
        }

        yield return Svg.Rectangle(Ink.Spring, On(pane, new Box(0, 0, between.MinX, high)));
        yield return Svg.Rectangle(Ink.Spring, On(pane, new Box(between.MaxX, 0, width, high)));
    }

    private static IEnumerable<XElement> Room(Pane pane, Box first, Box second, double width, string apart)
    {
        double foot = first.MinY - (WordsShare * width / 3);
        (double left, double right) = (first.MaxX, second.MinX);
        if (right < left)
        {
            yield return Svg.Rectangle(Ink.Removed, On(pane, new Box(right, first.MinY, left, 0)));
        }

        yield return Svg.Line(Ink.Hairline, pane.At(new Point(left, 0)), pane.At(new Point(left, foot)));
        yield return Svg.Line(Ink.Hairline, pane.At(new Point(right, 0)), pane.At(new Point(right, foot)));
        yield return Svg.Line(Ink.ContactLine, pane.At(new Point(left, foot)), pane.At(new Point(right, foot)));
        yield return Svg.Words(
            Ink.StrongLabel,
            new Point(Width / 2, pane.At(new Point(left, foot)).Y + 28),
            20,
            apart,
            "middle"
        );
    }

    private static string Apart(double sidewaysMm) =>
        sidewaysMm < 0
            ? $"share {Measure.Typeset.Length(-sidewaysMm)} of their layers"
            : $"{Measure.Typeset.Length(sidewaysMm)} apart";

    private static Box On(Pane pane, Box box)
    {
        Point low = pane.At(new Point(box.MinX, box.MaxY));
        Point high = pane.At(new Point(box.MaxX, box.MinY));
        return new Box(low.X, low.Y, high.X, high.Y);
    }
}
