using System.Collections.Immutable;
using Flushback.Geometry.Distances;

namespace Flushback.Geometry.Offsets;

/// <summary>Sorts loops into borders and the holes within them.</summary>
internal static class Nesting
{
    /// <summary>
    /// A region for every counter-clockwise loop, the largest first; a clockwise loop is a hole of the smallest that holds
    /// it.
    /// </summary>
    /// <exception cref="InvalidOperationException">A hole lies in no border, which loops about areas never do.</exception>
    public static ImmutableArray<Region> RegionsOf(ImmutableArray<Outline> loops)
    {
        Outline[] borders = [.. loops.Where(loop => loop.IsCounterClockwise).OrderByDescending(loop => loop.AreaMm2)];
        List<Outline>[] holes = [.. borders.Select(_ => new List<Outline>())];
        foreach (Outline hole in loops.Where(loop => !loop.IsCounterClockwise))
        {
            int owner = Array.FindLastIndex(borders, border => Holds(border, hole));
            if (owner < 0)
            {
                throw new InvalidOperationException($"A hole at {hole.Edges[0].Start} lies in no border.");
            }

            holes[owner].Add(hole);
        }

        return [.. borders.Select((border, i) => new Region(border, [.. holes[i]]))];
    }

    /// <summary>Whether a loop lies inside a border that it may touch but does not cross.</summary>
    private static bool Holds(Outline border, Outline loop)
    {
        if (border.AreaMm2 <= loop.AreaMm2 || !border.Bounds.Touches(loop.Bounds))
        {
            return false;
        }

        // Of all vertices, the one farthest from the border leaves no doubt about the side.
        Point inside = loop.Edges.MaxBy(edge => Distance.Between(edge.Start, border).DistanceMm).Start;
        return Containment.IsInside(inside, border.Edges.AsSpan());
    }
}
