using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Corners;

/// <summary>Finds the hollows of a loop that has the metal on its left.</summary>
internal static class Hollows
{
    /// <summary>Joints of edges turn by less than this through rounding alone.</summary>
    private const double NoTurnRad = 1e-7;

    /// <summary>The hollows as a cutter of a radius meets them; of radius 0, each arc and corner with what it runs into smoothly.</summary>
    public static ImmutableArray<HollowRun> Of(Outline metalOnLeft, double cutterRadiusMm)
    {
        ImmutableArray<Edge> edges = metalOnLeft.Edges;
        ImmutableArray<Bend> bends = BendsOf(edges, cutterRadiusMm);
        if (bends.IsEmpty)
        {
            return [];
        }

        List<List<Bend>> runs =
        [
            [bends[0]],
        ];
        for (int i = 1; i < bends.Length; i++)
        {
            if (AreClose(edges, bends[i - 1], bends[i], cutterRadiusMm))
            {
                runs[^1].Add(bends[i]);
            }
            else
            {
                runs.Add([bends[i]]);
            }
        }

        // The loop has no beginning: what lies to either side of the first edge belongs together.
        if (runs.Count > 1 && AreClose(edges, bends[^1], bends[0], cutterRadiusMm))
        {
            runs[0].InsertRange(0, runs[^1]);
            runs.RemoveAt(runs.Count - 1);
        }

        return [.. runs.Select(run => new HollowRun([.. run]))];
    }

    /// <summary>Handles (or places) of the entities at a bend.</summary>
    public static ImmutableArray<string> HandlesOf(Bend bend, BorderLoop loop)
    {
        string own = loop.EdgeHandles[bend.From];
        string before = loop.EdgeHandles[(bend.From + loop.EdgeHandles.Length - 1) % loop.EdgeHandles.Length];
        return bend.IsCorner && before != own ? [before, own] : [own];
    }

    private static ImmutableArray<Bend> BendsOf(ImmutableArray<Edge> edges, double cutterRadiusMm)
    {
        ImmutableArray<Bend>.Builder bends = ImmutableArray.CreateBuilder<Bend>();
        for (int i = 0; i < edges.Length; i++)
        {
            Edge edge = edges[i];
            double turn = TurnAtStart(edges, i);
            if (turn > NoTurnRad)
            {
                bends.Add(new Bend(turn, 0, edge.Start, i, IsCorner: true));
            }

            bool isReached = cutterRadiusMm > 0 && edge.RadiusMm >= cutterRadiusMm;
            if (edge.IsArc && edge.Bulge < 0 && !isReached)
            {
                bends.Add(new Bend(-edge.Sweep.Radians, edge.RadiusMm, edge.PointAt(0.5), i, IsCorner: false));
            }
        }

        return bends.ToImmutable();
    }

    /// <summary>Whether a cutter still touches at one bend when it begins to touch at the next.</summary>
    private static bool AreClose(ImmutableArray<Edge> edges, Bend bend, Bend next, double cutterRadiusMm)
    {
        // An arc's bend ends where the next edge begins; a corner's bend lies before its own edge.
        int after = bend.IsCorner ? bend.From : (bend.From + 1) % edges.Length;
        if (after == next.From)
        {
            return bend.IsCorner || next.IsCorner || !IsRidge(edges, after);
        }

        double reach = Reach(bend, cutterRadiusMm) + Reach(next, cutterRadiusMm);
        return (after + 1) % edges.Length == next.From
            && edges[after].Bulge <= 0
            && edges[after].LengthMm < reach
            && (bend.IsCorner || !IsRidge(edges, after))
            && (next.IsCorner || !IsRidge(edges, next.From));
    }

    /// <summary>Whether the metal has a convex corner where an edge begins, which parts one hollow from the next.</summary>
    private static bool IsRidge(ImmutableArray<Edge> edges, int edge) =>
        -TurnAtStart(edges, edge) > CutTolerances.SmoothRad;

    /// <summary>The turn away from the metal where an edge begins; negative at a convex corner.</summary>
    private static double TurnAtStart(ImmutableArray<Edge> edges, int edge)
    {
        Vector arriving = edges[(edge + edges.Length - 1) % edges.Length].TangentAt(1);
        Vector leaving = edges[edge].TangentAt(0);
        return -Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving));
    }

    /// <summary>How far before and after a bend a cutter that lies in it touches the border.</summary>
    private static double Reach(Bend bend, double cutterRadiusMm) =>
        Math.Max(0, cutterRadiusMm - bend.RadiusMm) * Math.Tan(Math.Min(bend.TurnRad, 3) / 2);
}
