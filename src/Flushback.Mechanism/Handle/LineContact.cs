using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Materials;

namespace Flushback.Mechanism.Handle;

/// <summary>Hertz's line contact of two steel cylinders, or of one on a flat.</summary>
/// <remarks>
/// Half width sqrt(4 F R / (pi l E*)), greatest pressure sqrt(F E* / (pi l R)), E* = E / (2 (1 - v^2)) for two like
/// steels (read second-hand; any text on contact mechanics).
/// </remarks>
public static class LineContact
{
    /// <summary>Greatest pressure in MPa.</summary>
    /// <param name="forceN">Force in newtons.</param>
    /// <param name="widthMm">Length of the line of contact, in millimetres.</param>
    /// <param name="radiusMm">Combined radius, 1 over the sum of both curvatures, in millimetres.</param>
    /// <param name="modulusMpa">Modulus of both, in MPa.</param>
    public static double PressureMpa(double forceN, double widthMm, double radiusMm, double modulusMpa) =>
        Math.Sqrt(forceN * Combined(modulusMpa) / (Math.PI * widthMm * radiusMm));

    /// <summary>Half the width of the strip of contact, in millimetres.</summary>
    /// <inheritdoc cref="PressureMpa"/>
    public static double HalfWidthMm(double forceN, double widthMm, double radiusMm, double modulusMpa) =>
        Math.Sqrt(4 * forceN * radiusMm / (Math.PI * widthMm * Combined(modulusMpa)));

    /// <summary>
    /// Combined radius where two outlines touch; null at a sharp corner, where there is none, and where a flat lies on a flat.
    /// </summary>
    internal static double? RadiusMm(Knife knife, SpringPose.Feature feature)
    {
        if (feature.BladeVertex >= 0 || feature.SpringVertex >= 0)
        {
            return null;
        }

        double curvature =
            Curvature(knife.Blade.Edges[feature.BladeEdge]) + Curvature(knife.Spring.Edges[feature.SpringEdge]);
        return curvature > 0 ? 1 / curvature : null;
    }

    private static double Curvature(Edge edge) => edge.IsArc ? Math.Sign(edge.Bulge) / edge.RadiusMm : 0;

    private static double Combined(double modulusMpa) => modulusMpa / (2 * (1 - (Steel.Poisson * Steel.Poisson)));
}
