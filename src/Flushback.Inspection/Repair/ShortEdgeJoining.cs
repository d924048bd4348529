using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Repair;

/// <summary>Joins segments too short to cut with what they stand next to.</summary>
/// <remarks>
/// Short lines that run on straight become one line; a short segment by itself shrinks to its middle, where its neighbours
/// then meet, so nothing moves by more than half its length.
/// </remarks>
internal static class ShortEdgeJoining
{
    /// <summary>How far a line may pass by the ends of the short ones it stands for, as a share of what counts as short.</summary>
    private const double StraightShare = 0.25;

    /// <summary>So many short lines become one at a time.</summary>
    private const int MostAtOnce = 50;

    /// <summary>A chain needs so many pieces to enclose anything.</summary>
    private const int FewestPieces = 2;

    /// <summary>Joins in place; returns how many segments went.</summary>
    public static int Join(List<Piece> pieces, bool isClosed, double shortMm)
    {
        int before = pieces.Count;
        JoinStraight(pieces, shortMm);
        for (int i = 0; i < pieces.Count && pieces.Count > FewestPieces; )
        {
            if (!IsShort(pieces[i], shortMm))
            {
                i++;
                continue;
            }

            Shrink(pieces, i, isClosed);

            // The neighbours have changed their length.
            i = Math.Max(0, i - 2);
        }

        return before - pieces.Count;
    }

    private static bool IsShort(Piece piece, double shortMm) =>
        piece.Edges is [var edge] && edge.LengthMm < shortMm - CutTolerances.TouchingMm;

    private static void JoinStraight(List<Piece> pieces, double shortMm)
    {
        List<Piece> joined = [];
        for (int i = 0; i < pieces.Count; )
        {
            int end = i + 1;
            while (
                end < Math.Min(pieces.Count, i + MostAtOnce)
                && IsShort(pieces[i], shortMm)
                && IsShort(pieces[end], shortMm)
                && IsStraight(pieces, i, end, shortMm)
            )
            {
                end++;
            }

            Piece first = pieces[i];
            joined.Add(
                end == i + 1
                    ? first
                    : new Piece(
                        [new Edge(first.Start, pieces[end - 1].End)],
                        first.First,
                        pieces[end - 1].First + pieces[end - 1].Count - first.First
                    )
            );
            i = end;
        }

        pieces.Clear();
        pieces.AddRange(joined);
    }

    private static bool IsStraight(List<Piece> pieces, int first, int last, double shortMm)
    {
        Edge line = new(pieces[first].Start, pieces[last].End);
        for (int i = first; i <= last; i++)
        {
            bool isOn =
                !pieces[i].Edges[0].IsArc
                && pieces[i].Edges[0].Chord.Dot(line.Chord) > 0
                && Distance.Between(pieces[i].End, line).DistanceMm <= StraightShare * shortMm;
            if (!isOn)
            {
                return false;
            }
        }

        return true;
    }

    private static void Shrink(List<Piece> pieces, int i, bool isClosed)
    {
        Piece gone = pieces[i];
        int before = i > 0 ? i - 1 : pieces.Count - 1;
        int after = i + 1 < pieces.Count ? i + 1 : 0;
        bool isFirst = !isClosed && i == 0;
        bool isLast = !isClosed && i == pieces.Count - 1;

        // The ends of an open chain stay where they are.
        Point meeting =
            isFirst ? gone.Start
            : isLast ? gone.End
            : gone.Start.MidpointTo(gone.End);
        if (!isLast)
        {
            pieces[after] = pieces[after].From(meeting);
        }

        if (!isFirst)
        {
            pieces[before] = pieces[before].To(meeting);
        }

        // The neighbour takes over the run, so that no edge of the chain is left without a piece.
        if (i > 0)
        {
            pieces[before] = pieces[before] with { Count = pieces[before].Count + gone.Count };
        }
        else
        {
            pieces[after] = pieces[after] with { First = gone.First, Count = gone.Count + pieces[after].Count };
        }

        pieces.RemoveAt(i);
    }
}
