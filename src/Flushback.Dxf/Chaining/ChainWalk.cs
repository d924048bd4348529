using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>Walks joined units into chains, closed or open.</summary>
internal sealed class ChainWalk(IReadOnlyList<ChainUnit> units, Joints joints)
{
    private readonly bool[] _visited = new bool[units.Count];

    /// <summary>All chains, in the order of their first unit.</summary>
    public IEnumerable<Chain> Chains()
    {
        for (int unit = 0; unit < units.Count; unit++)
        {
            if (!_visited[unit] && !joints.IsDropped(unit))
            {
                yield return ChainThrough(unit);
            }
        }
    }

    private Chain ChainThrough(int unit)
    {
        // Forward from the unit's last end; when that comes round to its first end, the chain is closed.
        UnitEnd start = new(unit, IsLast: false);
        List<UnitEnd> entries = [start];
        _visited[unit] = true;
        if (Follow(start, entries))
        {
            return new Chain(entries, IsClosed: true);
        }

        // Open: walk back from the first end as well, and put that part in front, turned round.
        List<UnitEnd> backwards = [start.Opposite];
        Follow(start.Opposite, backwards);
        IEnumerable<UnitEnd> front = backwards.Skip(1).Reverse().Select(entry => entry.Opposite);
        return new Chain([.. front, .. entries], IsClosed: false);
    }

    /// <summary>Follows joints from the far end of the unit entered at <paramref name="entry"/>; true when it comes round.</summary>
    private bool Follow(UnitEnd entry, List<UnitEnd> entries)
    {
        UnitEnd origin = entry;
        while (joints.PartnerOf(entry.Opposite) is { } next)
        {
            if (next == origin)
            {
                return true;
            }

            _visited[next.Unit] = true;
            entries.Add(next);
            entry = next;
        }

        return false;
    }
}

/// <summary>Units in the order of travel, each by the end at which it is entered.</summary>
internal sealed record Chain(IReadOnlyList<UnitEnd> Entries, bool IsClosed)
{
    /// <summary>Where an open chain begins.</summary>
    public UnitEnd First => Entries[0];

    /// <summary>Where an open chain ends.</summary>
    public UnitEnd Last => Entries[^1].Opposite;

    /// <summary>A closed chain, each joint in the one place both partners share.</summary>
    public Contour ToContour(IReadOnlyList<ChainUnit> units, Joints joints)
    {
        List<Vertex> vertices = VerticesLeft(units, joints);
        ImmutableArray<string> names = Names(units);
        IEnumerable<string> ofEdges = NamesOfEdges(units);
        if (vertices.Count == 1)
        {
            vertices = Halved(vertices[0], units[Entries[0].Unit].Edges[0]);
            ofEdges = [names[0], names[0]];
        }

        return new Contour(Outline.FromVertices([.. vertices]), names) { EdgeHandles = [.. ofEdges] };
    }

    /// <summary>An open chain as it is.</summary>
    public OpenPath ToOpenPath(IReadOnlyList<ChainUnit> units, Joints joints)
    {
        List<Vertex> vertices = VerticesLeft(units, joints);
        vertices.Add(new Vertex(joints.PlaceOf(Last)));
        ImmutableArray<Edge>.Builder edges = ImmutableArray.CreateBuilder<Edge>(vertices.Count - 1);
        for (int i = 0; i + 1 < vertices.Count; i++)
        {
            edges.Add(new Edge(vertices[i].Position, vertices[i + 1].Position, vertices[i].Bulge));
        }

        return new OpenPath(edges.MoveToImmutable(), Names(units), joints.IsAtBranch(First) || joints.IsAtBranch(Last))
        {
            EdgeHandles = [.. NamesOfEdges(units)],
        };
    }

    private IEnumerable<string> NamesOfEdges(IReadOnlyList<ChainUnit> units) =>
        Entries.SelectMany(entry => Enumerable.Repeat(units[entry.Unit].Name, units[entry.Unit].Edges.Length));

    private ImmutableArray<string> Names(IReadOnlyList<ChainUnit> units) =>
        [.. Entries.Select(entry => units[entry.Unit].Name)];

    /// <summary>The vertex at which each edge begins.</summary>
    private List<Vertex> VerticesLeft(IReadOnlyList<ChainUnit> units, Joints joints)
    {
        List<Vertex> vertices = [];
        foreach (UnitEnd entry in Entries)
        {
            Point place = joints.PlaceOf(entry);
            foreach (Edge edge in InTravel(units[entry.Unit].Edges, entry.IsLast))
            {
                vertices.Add(new Vertex(place, edge.Bulge));
                place = edge.End;
            }
        }

        return vertices;
    }

    private static IEnumerable<Edge> InTravel(ImmutableArray<Edge> edges, bool isReversed) =>
        isReversed ? edges.Reverse().Select(edge => edge.Reversed) : edges;

    /// <summary>An arc that closes on itself needs a second vertex, or it would have two equal ends.</summary>
    private static List<Vertex> Halved(Vertex start, Edge arc)
    {
        double bulge = Math.Tan(arc.Sweep.Radians / 8);
        return [start with { Bulge = bulge }, new Vertex(arc.PointAt(0.5), bulge)];
    }
}
