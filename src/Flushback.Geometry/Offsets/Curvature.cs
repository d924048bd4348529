namespace Flushback.Geometry.Offsets;

/// <summary>How sharply an edge bends.</summary>
internal static class Curvature
{
    /// <summary>One over the radius, per millimetre: positive for a counter-clockwise arc, zero for a line.</summary>
    public static double Of(in Edge edge) => Math.Sign(edge.Bulge) / edge.RadiusMm;
}
