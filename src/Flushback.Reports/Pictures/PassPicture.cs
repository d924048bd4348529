using System.Globalization;
using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Pictures;

/// <summary>The knife after a pass: tang and nose open, and what came off close up.</summary>
internal static class PassPicture
{
    private const double Width = 560;
    private const double Aspect = 4.0 / 3;

    // Closer than this a picture shows nothing but an edge.
    private const double LeastCloseMm = 1;

    /// <summary>Tang and nose with the blade open, what the pass took off in red.</summary>
    public static XElement Whole(Simulation simulation, SimulationStep step, int number)
    {
        var pane = new Pane(TangWindow.Of(simulation.Start.Report!), Width);
        return Svg.Picture(
            $"pass-{Number(number)}",
            pane.Width,
            pane.Height,
            number == 0 ? "Tang and nose as drawn, open" : $"Tang and nose after pass {Number(number)}, open",
            Description(step),
            [.. Parts(step, pane), .. Ruler.Of(pane)]
        );
    }

    /// <summary>What came off, as large as it fits; null before the first pass.</summary>
    public static XElement? Close(SimulationStep step, int number)
    {
        if (step.Removed is not { Regions.IsEmpty: false } removed)
        {
            return null;
        }

        RigidMotion motion = MotionOf(step, removed.Part);
        Box off = removed.Regions.Aggregate(
            Box.Empty,
            (box, region) => box.Including(region.Transformed(motion).Bounds)
        );
        double wide = Math.Max(LeastCloseMm, 1.25 * Math.Max(off.WidthMm, off.HeightMm * Aspect));
        Point centre = off.Centre;
        double high = wide / Aspect;
        var pane = new Pane(
            new Box(centre.X - (wide / 2), centre.Y - (high / 2), centre.X + (wide / 2), centre.Y + (high / 2)),
            Width
        );
        return Svg.Picture(
            $"pass-{Number(number)}-close",
            pane.Width,
            pane.Height,
            $"What pass {Number(number)} takes off, close up",
            $"The metal taken off is red; the picture is {Measure.Typeset.Mm(wide, 1)} mm wide.",
            [.. Parts(step, pane), .. Ruler.Of(pane)]
        );
    }

    private static IEnumerable<XElement> Parts(SimulationStep step, Pane pane)
    {
        Knife knife = step.Placement.Knife;
        StopReading open = step.Readings.Stops[0];
        return
        [
            Svg.Rectangle(Ink.Paper, pane.Sheet),
            .. KnifeParts.Handle(pane, knife),
            KnifeParts.Spring(pane, knife, open.SpringRotation),
            KnifeParts.Blade(pane, knife, open.RestAngle, Ink.Blade),
            .. KnifeParts.Pins(pane, knife, open.SpringRotation),
            .. Removed(step, pane),
        ];
    }

    private static IEnumerable<XElement> Removed(SimulationStep step, Pane pane) =>
        step.Removed is { } removed
            ? removed.Regions.Select(region => Svg.Path(Ink.Removed, pane.PathOf(region, MotionOf(step, removed.Part))))
            : [];

    private static RigidMotion MotionOf(SimulationStep step, Part part)
    {
        StopReading open = step.Readings.Stops[0];
        return part == Part.Blade ? Knife.BladeAt(open.RestAngle) : step.Placement.Knife.SpringAt(open.SpringRotation);
    }

    private static string Description(SimulationStep step) =>
        string.Join(
            " ",
            step.Readings.Stops.Select(stop =>
                $"{StopNames.Of(stop.Stop)}: the dial reads {Measure.Typeset.SignedThou(stop.LiftMm)} thou."
            )
        );

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
