using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Handle;

namespace Flushback.Reports.Pictures;

/// <summary>What a chart of the handle shows.</summary>
public enum HandleCurve
{
    /// <summary>Lift in the handle and on the bench, over the blade angle.</summary>
    Lift,

    /// <summary>Torque of the hand towards closed, closing, opening and without friction, over the blade angle.</summary>
    Torque,

    /// <summary>Strain energy over the blade angle.</summary>
    Energy,

    /// <summary>Bending stress along the spring, open and where it is greatest.</summary>
    Stress,
}

/// <summary>The curves of the handle. One shape does for a phone and, two abreast, for a desk.</summary>
public static class HandleChart
{
    private const double TextSize = 14.5;

    /// <summary>Width of a letter against the size of the type, a little on the safe side.</summary>
    private const double LetterWidth = 0.58;

    private const double SwatchWidth = 24;
    private static readonly Box _sheet = new(0, 0, 440, 370);
    private static readonly Box _plot = new(58, 76, 392, 316);

    /// <summary>Draws one of the charts.</summary>
    /// <returns>A complete SVG picture.</returns>
    public static XElement Draw(HandleReport report, HandleCurve curve)
    {
        HandleLines lines = HandleLines.Of(report, curve);
        CurveField field = FieldAround(lines);
        ChartGrid grid = new()
        {
            Sheet = _sheet,
            Field = field,
            TextSize = TextSize,
            XWords = lines.XWords,
            RightUnit = lines.RightUnit,
        };
        return Svg.Picture(
            $"handle-{curve.ToString().ToLowerInvariant()}",
            _sheet.WidthMm,
            _sheet.HeightMm,
            lines.Title,
            lines.Description,
            [
                .. grid.Draw(),
                .. Zero(field),
                .. lines.Marks.SelectMany((mark, i) => Mark(field, mark, isLast: i == lines.Marks.Length - 1)),
                .. Titles(lines),
                .. Legend(lines),
                .. lines.Lines.Select(line => Svg.Path(line.Ink, Svg.Through(line.Points.Select(field.At)))),
                .. lines.Rests.Select(rest => Svg.Disc(Ink.RestPoint, field.At(rest), 4.5)),
            ]
        );
    }

    /// <summary>A field that holds all points, zero, and every mark.</summary>
    private static CurveField FieldAround(HandleLines lines)
    {
        Box box = lines.Lines.SelectMany(line => line.Points).Aggregate(Box.Empty, (all, p) => all.Including(p));
        (double low, double high) = (Math.Min(0, box.MinY), Math.Max(0, box.MaxY));
        double margin = 0.06 * Math.Max(high - low, 1e-9);
        double left = Math.Min(box.MinX, lines.Marks.Min(mark => mark.X));
        double right = Math.Max(box.MaxX, lines.Marks.Max(mark => mark.X));
        return new CurveField(
            new Box(left, low - margin, right, high + margin),
            _plot,
            right - left > 120 ? 30 : RoundTicks.Step((right - left) / 6),
            MostYTicks: 7
        );
    }

    private static IEnumerable<XElement> Zero(CurveField field)
    {
        double y = field.Y(0);
        yield return Svg.Line(Ink.Axis, new Point(field.Plot.MinX, y), new Point(field.Plot.MaxX, y));
    }

    private static IEnumerable<XElement> Mark(CurveField field, (double X, string Name) mark, bool isLast)
    {
        double x = field.X(mark.X);
        string anchor =
            x - field.Plot.MinX < 30 ? "start"
            : isLast && field.Plot.MaxX - x < 30 ? "end"
            : "middle";
        yield return Svg.Line(Ink.Hairline, new Point(x, field.Plot.MinY), new Point(x, field.Plot.MaxY));
        yield return Svg.Words(Ink.QuietLabel, new Point(x, field.Plot.MinY - 6), TextSize, mark.Name, anchor);
    }

    private static IEnumerable<XElement> Titles(HandleLines lines)
    {
        yield return Svg.Words(Ink.StrongLabel, new Point(4, TextSize + 2), TextSize, lines.Title);
        yield return Svg.Words(
            Ink.Label,
            new Point(_plot.Centre.X, _sheet.MaxY - 10),
            TextSize,
            lines.XTitle,
            "middle"
        );
        if (lines.RightUnit is not null)
        {
            yield return Svg.Words(
                Ink.StrongLabel,
                new Point(_sheet.MaxX - 4, TextSize + 2),
                TextSize,
                lines.RightTitle,
                "end"
            );
        }
    }

    /// <summary>A stroke and a name for each curve, in a row under the title.</summary>
    private static IEnumerable<XElement> Legend(HandleLines lines)
    {
        double y = (2 * TextSize) + 12;
        double x = 4;
        foreach (HandleLine line in lines.Lines.Reverse())
        {
            Point stroke = new(x, y - (TextSize / 3));
            yield return Svg.Path(line.Ink, Svg.Through([stroke, stroke + new Vector(SwatchWidth, 0)]));
            yield return Svg.Words(Ink.Label, new Point(x + SwatchWidth + 6, y), TextSize, line.Name);
            x += SwatchWidth + 6 + (line.Name.Length * LetterWidth * TextSize) + 12;
        }
    }
}
