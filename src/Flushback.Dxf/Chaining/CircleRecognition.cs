using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>Tells a circle drawn as arcs (two half circles, say) from any other outline.</summary>
internal static class CircleRecognition
{
    /// <summary>The circle, when every edge is an arc of it.</summary>
    public static Circle? Of(Outline outline, double toleranceMm)
    {
        double sweep = 0;
        double x = 0;
        double y = 0;
        double radius = 0;
        foreach (Edge edge in outline.Edges)
        {
            if (!edge.IsArc)
            {
                return null;
            }

            // Longer arcs know their centre better.
            double weight = edge.Sweep.Radians;
            Point centre = edge.Centre;
            sweep += weight;
            x += weight * centre.X;
            y += weight * centre.Y;
            radius += weight * edge.RadiusMm;
        }

        Circle mean = new(new Point(x / sweep, y / sweep), radius / sweep);
        bool isOne =
            Math.Abs(Math.Abs(sweep) - Math.Tau) < 0.01
            && outline.Edges.All(edge =>
                edge.Centre.IsWithin(toleranceMm, mean.Centre) && Math.Abs(edge.RadiusMm - mean.RadiusMm) <= toleranceMm
            );
        return isOne ? mean : null;
    }
}
