using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Catalogue.Designs;

/// <summary>A knife of our own invention, by its dimensions; drawn exactly, in lines and arcs.</summary>
/// <param name="Name">A pattern name, invented, or the seed it came from.</param>
public sealed record KnifeDesign(string Name)
{
    /// <summary>Radius of the blade pin and of the spring's pins.</summary>
    public double PinRadiusMm { get; init; } = 0.8;

    /// <summary>The backspring.</summary>
    public SpringDesign Spring { get; init; } = new();

    /// <summary>The tang.</summary>
    public TangDesign Tang { get; init; } = new();

    /// <summary>The shoulder and the rest of the blade.</summary>
    public BladeDesign Blade { get; init; } = new();

    /// <summary>The knife in its own frame, every edge named as it was meant: no face has to be found.</summary>
    public Knife ToKnife()
    {
        var (blade, bladeFaces) = BladeDrawing.Draw(this);
        var (spring, springFaces) = SpringDrawing.Draw(Spring);
        return new Knife
        {
            Blade = blade,
            BladeFaces = bladeFaces,
            Spring = spring,
            SpringFaces = springFaces,
            PivotRadiusMm = PinRadiusMm,
            CentrePin = new Circle(Spring.CentrePin, PinRadiusMm),
            RearPin = new Circle(Spring.RearPin, PinRadiusMm),
            Handle = HandleDrawing.Draw(this),
            DialPoint = new Point(0, Spring.UndersideMm + Spring.DepthMm + Spring.FrontStockMm),
            HasHalfStop = null,
        };
    }

    /// <summary>The knife as a maker would hand it in: open, in the knife frame, nothing named.</summary>
    public DrawnKnife ToDrawn() => ToDrawn(RigidMotion.Identity, Angle.Zero);

    /// <summary>The knife drawn elsewhere, turned, mirrored, or with the blade at another angle.</summary>
    /// <param name="toDrawing">From the knife frame to the drawing.</param>
    /// <param name="bladeAngle">Blade angle at which the blade is drawn; the spring stays as it lies when open.</param>
    public DrawnKnife ToDrawn(RigidMotion toDrawing, Angle bladeAngle)
    {
        Knife knife = ToKnife();
        return new DrawnKnife
        {
            Blade = knife.Blade.Transformed(Knife.BladeAt(bladeAngle).Then(toDrawing)),
            Spring = knife.Spring.Transformed(toDrawing),
            Pivot = toDrawing.Apply(new Circle(Point.Origin, PinRadiusMm)),
            CentrePin = toDrawing.Apply(knife.CentrePin),
            RearPin = toDrawing.Apply(knife.RearPin!.Value),
            Handle = knife.Handle!.Transformed(toDrawing),
            DrawnBladeAngle = bladeAngle,
        };
    }
}
