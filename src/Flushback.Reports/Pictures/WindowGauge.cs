using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>A reading against its window as a small straight gauge; the words beside it say the same.</summary>
internal static class WindowGauge
{
    private const double Width = 170;
    private const double Height = 30;

    /// <summary>Windows to either side of the target that the gauge shows; a reading beyond is held at its end.</summary>
    private const double Reach = 4;

    public static XElement Draw(StopReading reading)
    {
        double PerTolerance(double mm) =>
            reading.Target.ToleranceMm > 0 ? (mm - reading.Target.LiftMm) / reading.Target.ToleranceMm : 0;
        double X(double tolerances) =>
            (Width / 2) + (Math.Clamp(tolerances, -Reach, Reach) / Reach * ((Width / 2) - 8));
        double needle = X(PerTolerance(reading.LiftMm));
        return Svg.Picture(
            $"gauge-{StopNames.Of(reading.Stop).Replace(' ', '-')}",
            Width,
            Height,
            "Reading against window",
            VerdictWords.Of(reading, Measure.Typeset),
            [
                Svg.Rectangle(Ink.Window, new Box(X(-1), 8, X(1), 22)),
                Svg.Line(Ink.Axis, new Point(X(-Reach), 22), new Point(X(Reach), 22)),
                .. Enumerable
                    .Range((int)-Reach, (int)(2 * Reach) + 1)
                    .Select(tick =>
                        Svg.Line(Ink.Axis, new Point(X(tick), 22), new Point(X(tick), tick == 0 ? 29 : 26))
                    ),
                .. reading.Rests
                    ?
                    [
                        Svg.Path(
                            Ink.RestPoint,
                            Svg.Through(
                                [new Point(needle, 22), new Point(needle - 6, 3), new Point(needle + 6, 3)],
                                closed: true
                            )
                        ),
                    ]
                    : Enumerable.Empty<XElement>(),
            ]
        );
    }
}
