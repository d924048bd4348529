namespace Flushback.Cli.Regression.Baselines;

/// <summary>How far two outlines lie apart, whatever corner they begin at, which way they run and how they are cut into edges.</summary>
/// <param name="Mm">The distance, in millimetres.</param>
/// <param name="X">Where it is greatest, in the drawing, in millimetres.</param>
/// <param name="Y">The same.</param>
internal readonly record struct OutlineDrift(double Mm, double X, double Y)
{
    // Places looked at on each edge, beside its start. An edge that differs between them differs there too, by a little
    // less: a line and an arc are farthest apart at their middle.
    private const int PlacesOnAnEdge = 8;

    /// <summary>The greatest distance of a place of one from the other, both ways: Hausdorff's, at places along both.</summary>
    public static OutlineDrift Between(KeptPart one, KeptPart other)
    {
        if (one.Vertices.SequenceEqual(other.Vertices))
        {
            return default;
        }

        KeptEdge[] edges = Edges(one);
        KeptEdge[] others = Edges(other);
        OutlineDrift there = Farthest(edges, others);
        OutlineDrift back = Farthest(others, edges);
        return there.Mm >= back.Mm ? there : back;
    }

    private static OutlineDrift Farthest(KeptEdge[] from, KeptEdge[] to)
    {
        OutlineDrift farthest = default;
        foreach (KeptEdge edge in from)
        {
            for (int i = 0; i < PlacesOnAnEdge; i++)
            {
                (double x, double y) = edge.At((double)i / PlacesOnAnEdge);
                double nearest = to.Min(other => other.DistanceTo((x, y)));
                if (nearest > farthest.Mm)
                {
                    farthest = new OutlineDrift(nearest, x, y);
                }
            }
        }

        return farthest;
    }

    private static KeptEdge[] Edges(KeptPart part) =>
        [.. part.Vertices.Select((vertex, i) => new KeptEdge(vertex, part.Vertices[(i + 1) % part.Vertices.Count]))];
}
