using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>How the drawing was understood, in words, so that a maker sees at once when it was misread.</summary>
internal static class DrawingFacts
{
    public static IReadOnlyList<Fact> Of(BenchReport report, Measure measure)
    {
        Placement placement = report.Placement;
        Knife knife = placement.Knife;
        RigidMotion toDrawing = placement.ToDrawing;
        return
        [
            new Fact("Blade, over all", measure.Size(knife.Blade.Bounds), "another size means another unit"),
            new Fact("Spring, over all", measure.Size(knife.Spring.Bounds)),
            new Fact(
                "Blade drawn at",
                measure.Degrees(placement.DrawnBladeAngle),
                placement.DrawnBladeAngleFound ? "found from where the tip points" : "as given"
            ),
            new Fact(
                "Mirrored",
                toDrawing.Mirrored ? "yes: the knife was turned over to read it, blade to the right, spine up" : "no"
            ),
            new Fact(
                "Open blade points to",
                measure.Degrees(toDrawing.Apply(new Vector(1, 0)).Direction) + " in the drawing"
            ),
            new Fact("Blade pin", Pin(toDrawing.Apply(new Circle(Point.Origin, knife.PivotRadiusMm)), measure)),
            new Fact("Centre pin", Pin(toDrawing.Apply(knife.CentrePin), measure)),
            new Fact("Rear pin", knife.RearPin is { } rear ? Pin(toDrawing.Apply(rear), measure) : "not given"),
            new Fact("Dial stands at", measure.Place(toDrawing.Apply(knife.DialPoint))),
            new Fact("Half stop", HalfStop(report)),
        ];
    }

    private static string Pin(Circle pin, Measure measure) =>
        $"{measure.Place(pin.Centre)}, {measure.Mm(pin.DiameterMm, 3)} mm across";

    private static string HalfStop(BenchReport report) =>
        (report.HasHalfStop, report.Placement.Knife.HasHalfStop is not null) switch
        {
            (true, true) => "yes, as given",
            (true, false) => "yes, found from the lift",
            (false, true) => "none, as given",
            (false, false) => "none, found from the lift",
        };
}
