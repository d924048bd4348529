using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Mechanism.Knives;

/// <summary>
/// An outline with neighbouring edges joined where they continue one line or one circle, so that faces are found the
/// same whether or not an edge was drawn in pieces.
/// </summary>
internal sealed class CarrierRuns
{
    private const double SameMm = 1e-6;
    private const double SameDirection = 1e-6;

    private readonly int[] _runOf;

    public CarrierRuns(ImmutableArray<Edge> edges)
    {
        _runOf = new int[edges.Length];
        int first = Enumerable
            .Range(0, edges.Length)
            .FirstOrDefault(i => !Continues(edges[(i + edges.Length - 1) % edges.Length], edges[i]));
        List<Edge> runs = [];
        for (int step = 0; step < edges.Length; step++)
        {
            int i = (first + step) % edges.Length;
            if (step > 0 && Continues(edges[(i + edges.Length - 1) % edges.Length], edges[i]))
            {
                runs[^1] = Join(runs[^1], edges[i]);
            }
            else
            {
                runs.Add(edges[i]);
            }

            _runOf[i] = runs.Count - 1;
        }

        Edges = [.. runs];
    }

    /// <summary>The joined edges, in order of travel.</summary>
    public ImmutableArray<Edge> Edges { get; }

    /// <summary>What was found for each joined edge, told for each edge of the outline.</summary>
    public ImmutableArray<T> Spread<T>(IReadOnlyList<T> found) => [.. _runOf.Select(run => found[run])];

    private static bool Continues(Edge before, Edge after)
    {
        if (before.IsArc != after.IsArc)
        {
            return false;
        }

        Vector arriving = before.TangentAt(1);
        Vector leaving = after.TangentAt(0);
        bool smooth = Math.Abs(arriving.Cross(leaving)) < SameDirection && arriving.Dot(leaving) > 0;
        return smooth
            && (
                !before.IsArc
                || (
                    before.Bulge > 0 == after.Bulge > 0
                    && Math.Abs(before.RadiusMm - after.RadiusMm) < SameMm * before.RadiusMm
                )
            );
    }

    private static Edge Join(Edge before, Edge after) =>
        before.IsArc
            ? Edge.Arc(before.Start, after.End, before.Sweep + after.Sweep)
            : new Edge(before.Start, after.End);
}
