namespace Flushback.Geometry.Tests.Shapes;

/// <summary>The same shape drawn another way.</summary>
internal static class Redrawn
{
    /// <summary>Begun at another vertex.</summary>
    public static Outline StartingAt(this Outline outline, int vertex)
    {
        int first = vertex % outline.Edges.Length;
        return Outline.FromVertices([.. outline.Vertices[first..], .. outline.Vertices[..first]]);
    }

    /// <summary>With one edge drawn as two.</summary>
    public static Outline WithEdgeSplit(this Outline outline, int edge, double fraction)
    {
        int index = edge % outline.Edges.Length;
        Edge whole = outline.Edges[index];
        Edge first = whole.Part(0, fraction);
        Edge second = whole.Part(fraction, 1);
        List<Vertex> vertices = [.. outline.Vertices];
        vertices[index] = new Vertex(first.Start, first.Bulge);
        vertices.Insert(index + 1, new Vertex(second.Start, second.Bulge));
        return Outline.FromVertices([.. vertices]);
    }
}
