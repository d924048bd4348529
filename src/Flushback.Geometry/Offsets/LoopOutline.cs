using System.Collections.Immutable;

namespace Flushback.Geometry.Offsets;

/// <summary>Makes an outline of a loop of pieces.</summary>
internal static class LoopOutline
{
    /// <summary>The outline, with pieces of one curve that follow one another as one edge.</summary>
    public static Outline Of(ImmutableArray<Piece> loop, ImmutableArray<Edge> curves, Nodes nodes)
    {
        List<Piece> merged = Merged(loop);
        return Outline.FromVertices([
            .. merged.Select(piece => new Vertex(nodes.PositionOf(piece.Start), BulgeOf(piece, curves[piece.Curve]))),
        ]);
    }

    private static List<Piece> Merged(ImmutableArray<Piece> loop)
    {
        // Begun where a curve begins, so that none is split by the start of the loop; a circle of one curve has no such
        // place and keeps its pieces.
        int first = Enumerable
            .Range(0, loop.Length)
            .FirstOrDefault(i => !Follows(loop[i], loop[(i + loop.Length - 1) % loop.Length]), -1);
        if (first < 0)
        {
            return [.. loop];
        }

        List<Piece> merged = [];
        for (int i = 0; i < loop.Length; i++)
        {
            Piece piece = loop[(first + i) % loop.Length];
            if (merged.Count > 0 && Follows(piece, merged[^1]))
            {
                merged[^1] = merged[^1] with { To = piece.To, End = piece.End };
            }
            else
            {
                merged.Add(piece);
            }
        }

        return merged;
    }

    private static bool Follows(Piece piece, Piece before) => piece.Curve == before.Curve && piece.From >= before.To;

    private static double BulgeOf(Piece piece, in Edge curve) =>
        piece is { From: 0, To: 1 } || !curve.IsArc
            ? curve.Bulge
            : Math.Tan((curve.Sweep * ((piece.To - piece.From) / 4)).Radians);
}
