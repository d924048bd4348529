using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Curves;

/// <summary>Joins neighbouring arcs of one circle that a fit has cut apart.</summary>
/// <remarks>A circle that came as a spline so becomes a circle again.</remarks>
internal static class ArcMerging
{
    /// <summary>How far centres and radii may differ, in millimetres: rounding, well below any curve tolerance.</summary>
    private const double SameMm = 1e-7;

    /// <summary>An arc stays below three quarters of a turn, where its bulge still has all its digits.</summary>
    private const double MostSweep = 1.5 * Math.PI;

    /// <summary>The edges with neighbours joined where they are one.</summary>
    public static List<Edge> Merged(List<Edge> edges)
    {
        List<Edge> merged = new(edges.Count);
        foreach (Edge edge in edges)
        {
            if (merged.Count > 0 && TryMerge(merged[^1], edge) is { } whole)
            {
                merged[^1] = whole;
            }
            else
            {
                merged.Add(edge);
            }
        }

        return merged;
    }

    private static Edge? TryMerge(in Edge a, in Edge b)
    {
        if (!a.IsArc || !b.IsArc || a.End != b.Start || a.Bulge > 0 != b.Bulge > 0)
        {
            return null;
        }

        double sweep = a.Sweep.Radians + b.Sweep.Radians;
        bool isOneCircle =
            Math.Abs(sweep) <= MostSweep
            && a.Centre.IsWithin(SameMm, b.Centre)
            && Math.Abs(a.RadiusMm - b.RadiusMm) <= SameMm;
        return isOneCircle ? Edge.Arc(a.Start, b.End, new Angle(sweep)) : null;
    }
}
