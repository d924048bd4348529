using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Pictures;

/// <summary>The strip under a lift chart: which face of the blade carries the spring, stretch by stretch.</summary>
internal static class CarryingStrip
{
    /// <summary>Width of a letter against the size of the type, a little on the safe side.</summary>
    private const double LetterWidth = 0.56;

    public static IEnumerable<XElement> Of(BenchReport report, ChartScale scale)
    {
        Box strip = scale.Strip;
        double size = scale.TextSize;
        for (int i = 0; i < report.Curve.Intervals.Length; i++)
        {
            CarriedInterval interval = report.Curve.Intervals[i];
            var piece = new Box(scale.X(interval.From), strip.MinY, scale.X(interval.To), strip.MaxY);
            yield return Svg.Rectangle(i % 2 == 0 ? Ink.Strip : Ink.StripOther, piece, 3);
            if (WordsFor(interval, i, piece.WidthMm / (LetterWidth * size)) is { } words)
            {
                yield return Svg.Words(
                    Ink.StripLabel,
                    new Point(piece.Centre.X, piece.Centre.Y + (size / 3)),
                    size,
                    words,
                    "middle"
                );
            }
        }

        yield return Svg.Words(
            Ink.QuietLabel,
            new Point(strip.MinX, strip.MaxY + size + 5),
            size,
            "what carries the spring, over the blade angle"
        );
    }

    // Letter and name where there is room, the letter alone where there is little, nothing in a sliver.
    private static string? WordsFor(CarriedInterval interval, int index, double letters)
    {
        string letter = CarriedRow.LetterOf(index);
        string full = $"{letter}  {FaceNames.Of(interval.BladeFace)}";
        return full.Length + 1 <= letters ? full
            : letter.Length <= letters ? letter
            : null;
    }
}
