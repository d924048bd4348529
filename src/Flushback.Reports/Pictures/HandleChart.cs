using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Handle;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>What a chart of the handle shows.</summary>
public enum HandleCurve
{
    /// <summary>Lift in the handle and on the bench, over the blade angle.</summary>
    Lift,

    /// <summary>Torque of the hand closing and opening, with friction, over the blade angle.</summary>
    Torque,

    /// <summary>Strain energy over the blade angle.</summary>
    Energy,

    /// <summary>Bending stress along the spring, open and at its peak.</summary>
    Stress,
}

/// <summary>The curves of the handle: two lines at most, the second dashed, each named beside its end.</summary>
public static class HandleChart
{
    /// <summary>Draws one of the charts.</summary>
    /// <returns>A complete SVG picture.</returns>
    public static XElement Draw(HandleReport report, HandleCurve curve, ChartShape shape)
    {
        Lines lines = LinesOf(report, curve);
        CurveField field = CurveField.Around(lines.First.Concat(lines.Second ?? []), shape);
        string id = $"handle-{curve.ToString().ToLowerInvariant()}" + (shape == ChartShape.Wide ? "" : "-narrow");
        return Svg.Picture(
            id,
            field.Width,
            field.Height,
            lines.Title,
            lines.Description,
            [
                .. Frame(field, lines),
                Svg.Path(Ink.Curve, Svg.Through(lines.First.Select(field.At))),
                .. lines.Second is { } second
                    ? [Svg.Path(Ink.FlushLine, Svg.Through(second.Select(field.At)))]
                    : Array.Empty<XElement>(),
            ]
        );
    }

    private static IEnumerable<XElement> Frame(CurveField field, Lines lines)
    {
        Box plot = field.Plot;
        double size = field.TextSize;
        yield return Svg.Rectangle(Ink.Paper, new Box(0, 0, field.Width, field.Height));
        foreach (double tick in field.YTicks)
        {
            double y = field.At(new Point(0, tick)).Y;
            yield return Svg.Line(Ink.Grid, new Point(plot.MinX, y), new Point(plot.MaxX, y));
            yield return Svg.Words(
                Ink.QuietLabel,
                new Point(plot.MinX - 9, y + (size / 3)),
                size,
                Measure.Typeset.Number(tick, field.YDecimals),
                "end"
            );
        }

        foreach (double tick in field.XTicks)
        {
            double x = field.At(new Point(tick, 0)).X;
            yield return Svg.Line(Ink.Grid, new Point(x, plot.MinY), new Point(x, plot.MaxY));
            yield return Svg.Words(
                Ink.QuietLabel,
                new Point(x, plot.MaxY + 9 + size),
                size,
                Measure.Typeset.Number(tick, 0) + lines.XUnit,
                "middle"
            );
        }

        yield return Svg.Line(Ink.Axis, new Point(plot.MinX, plot.MinY), new Point(plot.MinX, plot.MaxY));
        yield return Svg.Line(Ink.Axis, new Point(plot.MinX, plot.MaxY), new Point(plot.MaxX, plot.MaxY));
        yield return Svg.Words(Ink.StrongLabel, new Point(4, size + 2), size, lines.Title);
        yield return Svg.Words(Ink.Label, new Point(4, (2 * size) + 8), size, lines.Legend);
    }

    private static Lines LinesOf(HandleReport report, HandleCurve curve)
    {
        string degree = Measure.Typeset.Degrees(Angle.Zero, 0)[1..];
        return curve switch
        {
            HandleCurve.Lift => new Lines(
                "Lift, mm",
                "in the handle; dashed: on the bench",
                degree,
                [.. report.Curve.Select(s => new Point(s.BladeAngle.Degrees, s.LiftMm))],
                [.. report.Curve.Select(s => new Point(s.BladeAngle.Degrees, s.BenchLiftMm))]
            ),
            HandleCurve.Torque => new Lines(
                "Torque of the hand, N mm",
                "closing; dashed: opening",
                degree,
                [.. report.Curve.Select(s => new Point(s.BladeAngle.Degrees, s.ClosingTorqueNmm))],
                [.. report.Curve.Select(s => new Point(s.BladeAngle.Degrees, s.OpeningTorqueNmm))]
            ),
            HandleCurve.Energy => new Lines(
                "Strain energy of the spring, N mm",
                "over the blade angle",
                degree,
                [.. report.Curve.Select(s => new Point(s.BladeAngle.Degrees, s.EnergyNmm))],
                null
            ),
            _ => new Lines(
                "Bending stress along the spring, MPa",
                "at its peak; dashed: open; mm behind the pivot are minus",
                "",
                [.. report.StressAlong.Select(p => new Point(p.XMm, p.PeakMpa))],
                [.. report.StressAlong.Select(p => new Point(p.XMm, p.OpenMpa))]
            ),
        };
    }

    private sealed record Lines(string Title, string Legend, string XUnit, Point[] First, Point[]? Second)
    {
        public string Description
        {
            get
            {
                Point top = First.MaxBy(point => point.Y);
                return $"{Title}: {Legend}. Highest {Measure.Typeset.Number(top.Y, 2)} at {Measure.Typeset.Number(top.X, 1)}{XUnit}.";
            }
        }
    }
}
