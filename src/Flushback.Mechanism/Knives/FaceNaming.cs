namespace Flushback.Mechanism.Knives;

/// <summary>Says which face or corner of a knife an edge or a vertex belongs to.</summary>
public sealed class FaceNaming(Knife knife)
{
    /// <summary>The face of a blade edge, or of the corner at a vertex (the start of the edge with that index).</summary>
    /// <param name="edge">Index of the edge.</param>
    /// <param name="vertex">Index of the vertex, or -1 for the edge itself.</param>
    public BladeFace BladeFaceOf(int edge, int vertex = -1)
    {
        if (vertex < 0)
        {
            return knife.BladeFaces[edge];
        }

        BladeFace before = knife.BladeFaces[(vertex + knife.BladeFaces.Length - 1) % knife.BladeFaces.Length];
        BladeFace after = knife.BladeFaces[vertex];
        return (before, after) switch
        {
            _ when before == after => before,
            _ when IsCorner(before) => before,
            _ when IsCorner(after) => after,
            (BladeFace.Shoulder, BladeFace.OpenFlat) => BladeFace.NotchCorner,
            (BladeFace.Spine, BladeFace.Shoulder) => BladeFace.Shoulder,
            (BladeFace.OpenFlat, _) => BladeFace.OpenCorner,
            (BladeFace.HalfStopFace or BladeFace.Run, BladeFace.ClosedFace) => BladeFace.ClosedCorner,
            (BladeFace.ClosedFace, _) => BladeFace.Kick,
            _ => after,
        };
    }

    /// <summary>The face of a spring edge, or of the corner at a vertex (the start of the edge with that index).</summary>
    /// <param name="edge">Index of the edge.</param>
    /// <param name="vertex">Index of the vertex, or -1 for the edge itself.</param>
    public SpringFace SpringFaceOf(int edge, int vertex = -1)
    {
        if (vertex < 0)
        {
            return knife.SpringFaces[edge];
        }

        SpringFace before = knife.SpringFaces[(vertex + knife.SpringFaces.Length - 1) % knife.SpringFaces.Length];
        SpringFace after = knife.SpringFaces[vertex];
        return (before, after) switch
        {
            _ when before == after => before,
            (SpringFace.Underside, SpringFace.EndFace) => SpringFace.NoseCorner,
            (SpringFace.NoseCorner, _) or (_, SpringFace.NoseCorner) => SpringFace.NoseCorner,
            (SpringFace.EndFace, SpringFace.Back) => SpringFace.EndFace,
            _ => after,
        };
    }

    private static bool IsCorner(BladeFace face) =>
        face is BladeFace.NotchCorner or BladeFace.OpenCorner or BladeFace.ClosedCorner or BladeFace.Kick;
}
