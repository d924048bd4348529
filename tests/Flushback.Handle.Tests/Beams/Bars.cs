using Flushback.Geometry;
using Flushback.Mechanism.Handle.Beams;

namespace Flushback.Handle.Tests.Beams;

/// <summary>Bars of simple shape, lying along x with the centre pin at the origin.</summary>
internal static class Bars
{
    /// <summary>Pins without holes, so that nothing is taken out.</summary>
    public static Circle PinAt(double x, double radius = 0) => new(new Point(x, 0), radius);

    /// <summary>A bar of straight taper about the x axis.</summary>
    public static Outline Tapered(double fromX, double fromDepth, double toX, double toDepth) =>
        Outline.FromVertices([
            new Vertex(fromX, -fromDepth / 2),
            new Vertex(toX, -toDepth / 2),
            new Vertex(toX, toDepth / 2),
            new Vertex(fromX, fromDepth / 2),
        ]);

    /// <summary>A uniform bar on two pins, its overhang loaded at the end.</summary>
    public static SpringBeam Uniform(double span, double overhang, double depth, double pinRadius = 0) =>
        new(Tapered(-span - 3, depth, overhang + 3, depth), PinAt(0, pinRadius), PinAt(-span, pinRadius), overhang);
}
