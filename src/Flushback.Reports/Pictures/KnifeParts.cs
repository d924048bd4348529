using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Reports.Pictures;

/// <summary>Draws the parts of a knife on a pane.</summary>
internal static class KnifeParts
{
    public static IEnumerable<XElement> Handle(Pane pane, Knife knife) =>
        knife.Handle is { } handle ? [Svg.Path(Ink.Handle, pane.PathOf(handle, RigidMotion.Identity))] : [];

    public static XElement Spring(Pane pane, Knife knife, Angle springRotation) =>
        Svg.Path(Ink.Spring, pane.PathOf(knife.Spring, knife.SpringAt(springRotation)));

    public static XElement Blade(Pane pane, Knife knife, Angle bladeAngle, Ink ink) =>
        Svg.Path(ink, pane.PathOf(knife.Blade, Knife.BladeAt(bladeAngle)));

    /// <summary>The pins, each with its centre lines; the rear pin rides with the spring.</summary>
    public static IEnumerable<XElement> Pins(Pane pane, Knife knife, Angle springRotation)
    {
        Circle pivot = new(Point.Origin, knife.PivotRadiusMm);
        IEnumerable<Circle> pins = knife.RearPin is { } rear
            ? [pivot, knife.CentrePin, knife.SpringAt(springRotation).Apply(rear)]
            : [pivot, knife.CentrePin];
        return pins.Where(pin => pane.Window.Touches(Around(pin))).SelectMany(pin => Pin(pane, pin));
    }

    /// <summary>A pin with its centre lines.</summary>
    public static IEnumerable<XElement> Pin(Pane pane, Circle pin)
    {
        Point centre = pane.At(pin.Centre);
        double radius = pin.RadiusMm * pane.Scale;
        double reach = (radius * 1.25) + 4;
        yield return Svg.Disc(Ink.Pin, centre, radius);
        yield return Svg.Line(Ink.CentreLine, centre - new Vector(reach, 0), centre + new Vector(reach, 0));
        yield return Svg.Line(Ink.CentreLine, centre - new Vector(0, reach), centre + new Vector(0, reach));
    }

    private static Box Around(Circle pin) => Box.Empty.Including(pin.Centre).Grown(pin.RadiusMm);
}
