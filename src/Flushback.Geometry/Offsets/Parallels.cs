using System.Collections.Immutable;
using Flushback.Geometry.Checking;

namespace Flushback.Geometry.Offsets;

/// <summary>Every curve the border of an offset can lie on: parallels of the edges, arcs about the corners.</summary>
/// <remarks>
/// A point of the new border lies the distance away from a nearest point of the old one. If that is inside an edge, the
/// point lies on the edge's parallel; if it is a vertex, on the arc about it between the normals of its two edges, which
/// is there only where the corner points to the side that is offset to. An arc that would shrink to nothing or beyond has
/// no such point and no parallel.
/// </remarks>
internal static class Parallels
{
    /// <summary>Sine of the angle between two edges up to which their corner may be a cusp: small enough to be the angle.</summary>
    private const double SharpCorner = 0.01;

    /// <summary>The curves, in order and direction of the edges they come from.</summary>
    /// <param name="loops">Closed loops with the material on the left.</param>
    /// <param name="distanceMm">Distance to the right, out of the material; negative to the left.</param>
    /// <param name="shortestMm">Curves no longer than this are left out: their ends are one place.</param>
    public static ImmutableArray<Edge> Of(IEnumerable<Outline> loops, double distanceMm, double shortestMm)
    {
        ImmutableArray<Edge>.Builder curves = ImmutableArray.CreateBuilder<Edge>();
        foreach (Outline loop in loops)
        {
            for (int i = 0; i < loop.Edges.Length; i++)
            {
                Edge edge = loop.Edges[i];
                AddIfLong(ParallelOf(edge, distanceMm));
                AddIfLong(ArcBetween(edge, loop.Edges[(i + 1) % loop.Edges.Length], distanceMm));
            }
        }

        return curves.DrainToImmutable();

        void AddIfLong(Edge? curve)
        {
            if (curve is { } found && found.LengthMm > shortestMm)
            {
                curves.Add(found);
            }
        }
    }

    private static Edge? ParallelOf(in Edge edge, double distanceMm)
    {
        if (edge.IsArc && edge.RadiusMm + (Math.Sign(edge.Bulge) * distanceMm) <= 0)
        {
            return null;
        }

        // An arc about the same centre has the same included angle, so the same bulge.
        return new Edge(
            edge.Start + (edge.OutwardNormalAt(0) * distanceMm),
            edge.End + (edge.OutwardNormalAt(1) * distanceMm),
            edge.Bulge
        );
    }

    private static Edge? ArcBetween(in Edge before, in Edge after, double distanceMm)
    {
        double turn = TurnBetween(before, after);
        if (turn * distanceMm <= 0)
        {
            return null;
        }

        Point corner = after.Start;
        return Edge.Arc(
            corner + (before.OutwardNormalAt(1) * distanceMm),
            corner + (after.OutwardNormalAt(0) * distanceMm),
            new Angle(turn)
        );
    }

    /// <summary>How far travel turns to the left at a vertex, in radians.</summary>
    private static double TurnBetween(in Edge before, in Edge after)
    {
        Vector arriving = before.TangentAt(1);
        Vector leaving = after.TangentAt(0);
        double cross = arriving.Cross(leaving);
        double dot = arriving.Dot(leaving);
        double turn = Math.Atan2(cross, dot);
        double bend = Curvature.Of(before) + Curvature.Of(after);
        if (dot >= 0 || Math.Abs(cross) > SharpCorner || turn * bend <= 0)
        {
            return turn;
        }

        // A sharp corner whose edges bend towards one another: a distance s out they are s |cross| - s^2 |bend| / 2 apart, at
        // the most cross^2 / (2 |bend|), and then change sides. When that is no more than touching, only what follows counts:
        // a cusp, with the material on the other side.
        bool isCusp = cross * cross <= 2 * Math.Abs(bend) * GeometryTolerances.Default.TouchingMm;
        return isCusp ? turn - (Math.Sign(turn) * Math.Tau) : turn;
    }
}
