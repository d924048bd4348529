using Flushback.Geometry;
using Flushback.Geometry.Distances;

namespace Flushback.Inspection.Stock;

/// <summary>Finds how far one outline comes out of another at most.</summary>
/// <remarks>
/// Pieces of the outline are halved, the most promising first. With q the place on the other nearest to the middle of a
/// piece, no point of the piece is farther from the other than from q, which for a line is greatest at an end.
/// </remarks>
internal static class FarthestOutside
{
    /// <summary>How good the answer is: a hundredth of a micrometre.</summary>
    public const double ToleranceMm = 1e-5;

    /// <summary>So many places are looked at; each halves what is left to gain.</summary>
    private const int MostPieces = 500_000;

    /// <summary>The greatest distance outside, 0 when nothing is, and where.</summary>
    public static (double Mm, Point At) Of(Outline outline, Outline other)
    {
        PriorityQueue<Edge, double> open = new();
        (double Mm, Point At) best = (0, outline.Edges[0].Start);
        foreach (Edge edge in outline.Edges)
        {
            Look(edge);
        }

        for (int looked = 0; looked < MostPieces && open.TryDequeue(out Edge piece, out double minusBound); looked++)
        {
            if (-minusBound <= best.Mm + ToleranceMm)
            {
                break;
            }

            Look(piece.Part(0, 0.5));
            Look(piece.Part(0.5, 1));
        }

        return best;

        void Look(Edge piece)
        {
            Point middle = piece.PointAt(0.5);
            Nearest nearest = Distance.Between(middle, other);
            bool isInside = other.Contains(middle);
            if (!isInside && nearest.DistanceMm > best.Mm)
            {
                best = (nearest.DistanceMm, middle);
            }

            if (!isInside || nearest.DistanceMm < piece.LengthMm / 2)
            {
                Point q = nearest.OnSecond;

                // An arc comes out between its ends by no more than its height over its chord.
                double bound = Math.Max(q.DistanceTo(piece.Start), q.DistanceTo(piece.End)) + piece.SagittaMm;
                open.Enqueue(piece, -bound);
            }
        }
    }
}
