using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>Draws the dial standing on the spring's back and the line to which the back would be flush.</summary>
internal static class DialMark
{
    /// <summary>Height from the back to a little above the dial, in picture units.</summary>
    public const double Height = StemLength + (2 * FaceRadius) + 8;

    private const double FaceRadius = 26;
    private const double StemLength = 46;

    /// <summary>One turn of the hand on the little dial.</summary>
    private const double ThouPerTurn = 100;

    public static IEnumerable<XElement> Of(BenchReport report, StopReading reading, Pane pane)
    {
        Knife knife = report.Placement.Knife;
        Angle openRotation = report.At(Stop.Open)?.SpringRotation ?? Angle.Zero;
        double flush = pane.At(knife.SpringAt(openRotation).Apply(knife.DialPoint)).Y;
        yield return Svg.Line(Ink.FlushLine, new Point(0, flush), new Point(pane.Width, flush));
        yield return Svg.Words(Ink.FlushLabel, new Point(pane.Width - 12, flush - 9), 18, "flush", "end");

        Point foot = pane.At(knife.SpringAt(reading.SpringRotation).Apply(knife.DialPoint));
        Point centre = foot - new Vector(0, StemLength + FaceRadius);
        Angle turn = new(reading.LiftMm / Measure.MmPerThou / ThouPerTurn * Math.Tau);
        yield return Svg.Line(Ink.Axis, foot - new Vector(0, StemLength), foot);
        yield return Svg.Path(
            Ink.CurvePoint,
            Svg.Through([foot, foot + new Vector(-6, -13), foot + new Vector(6, -13)], closed: true)
        );
        yield return Svg.Disc(Ink.Pin, centre, FaceRadius);
        yield return Svg.Line(Ink.Axis, centre - new Vector(0, FaceRadius), centre - new Vector(0, FaceRadius - 6));
        yield return Svg.Line(Ink.ContactLine, centre, centre + (new Vector(0, -(FaceRadius - 7))).Rotated(turn));
        yield return Svg.Disc(Ink.CurvePoint, centre, 4);
        yield return Svg.Words(
            Ink.StrongLabel,
            centre + new Vector(FaceRadius + 10, -1),
            22,
            $"{Measure.Typeset.SignedThou(reading.LiftMm)} thou"
        );
        yield return Svg.Words(
            Ink.QuietLabel,
            centre + new Vector(FaceRadius + 10, 21),
            18,
            $"{Measure.Typeset.SignedMm(reading.LiftMm)} mm"
        );
    }
}
