using Flushback.Geometry;
using Flushback.Reports.Print;

namespace Flushback.Reports.Pictures;

/// <summary>Finds free places for words about places on a drawing, each at the end of a straight leader.</summary>
/// <remarks>
/// One after another, nearest first: each along the direction out of the metal, then more and more aslant. A place is free
/// where the words cover no line of the drawing, no other words and no leader, and the leader crosses none either.
/// </remarks>
/// <param name="drawn">Lines that are not to be covered, in the frame of the labels.</param>
/// <param name="window">Where labels may lie; null for anywhere.</param>
/// <param name="gapMm">Least distance of words from what is around them.</param>
public sealed class LabelPlaces(IEnumerable<Edge> drawn, Box? window, double gapMm)
{
    private const double SlantStepDeg = 12;
    private const int MostSlants = 6;
    private const int MostSteps = 60;

    // Below this share of a leader's length it is upright, and the words stand in the middle of its end.
    private const double Upright = 0.25;

    private readonly Point[] _drawn = [.. drawn.SelectMany(edge => PointsOn(edge, gapMm))];
    private readonly List<PlacedLabel> _placed = [];

    /// <summary>Places a label.</summary>
    /// <param name="at">What it is about.</param>
    /// <param name="outward">Direction in which it goes best.</param>
    /// <param name="widthMm">Width of the words.</param>
    /// <param name="heightMm">Height of the words.</param>
    /// <param name="leaderMm">Least length of the leader.</param>
    /// <returns>The place; the nearest of all, whatever it covers, where none is free.</returns>
    public PlacedLabel Place(Point at, Vector outward, double widthMm, double heightMm, double leaderMm)
    {
        PlacedLabel best = Candidate(at, outward, widthMm, heightMm, leaderMm);
        foreach (PlacedLabel candidate in Candidates(at, outward, widthMm, heightMm, leaderMm))
        {
            if (IsFree(candidate))
            {
                best = candidate;
                break;
            }
        }

        _placed.Add(best);
        return best;
    }

    private IEnumerable<PlacedLabel> Candidates(
        Point at,
        Vector outward,
        double widthMm,
        double heightMm,
        double leaderMm
    )
    {
        for (int step = 0; step < MostSteps; step++)
        {
            double length = leaderMm + (step * heightMm);
            for (int slant = 0; slant <= MostSlants; slant++)
            {
                foreach (int side in slant == 0 ? [1] : (int[])[1, -1])
                {
                    Vector along = outward.Rotated(Angle.FromDegrees(side * slant * SlantStepDeg));
                    yield return Candidate(at, along, widthMm, heightMm, length);
                }
            }
        }
    }

    private PlacedLabel Candidate(Point at, Vector along, double widthMm, double heightMm, double lengthMm)
    {
        Point end = at + (along * lengthMm);
        TextAnchor anchor =
            Math.Abs(along.X) < Upright ? TextAnchor.Middle
            : along.X > 0 ? TextAnchor.Left
            : TextAnchor.Right;
        double left = anchor switch
        {
            TextAnchor.Middle => end.X - (widthMm / 2),
            TextAnchor.Left => end.X + (gapMm / 2),
            _ => end.X - widthMm - (gapMm / 2),
        };
        double low =
            anchor != TextAnchor.Middle ? end.Y - (heightMm / 2)
            : along.Y > 0 ? end.Y + (gapMm / 2)
            : end.Y - heightMm - (gapMm / 2);
        return new PlacedLabel(new Box(left, low, left + widthMm, low + heightMm), anchor, at, end);
    }

    private bool IsFree(PlacedLabel label)
    {
        Box around = label.Words.Grown(gapMm);
        return (window is not { } seen || (seen.Contains(Low(around)) && seen.Contains(High(around))))
            && !_drawn.Any(around.Contains)
            && _placed.TrueForAll(other =>
                !around.Touches(other.Words)
                && !Crosses(label.At, label.End, other.Words.Grown(gapMm / 2))
                && !Crosses(other.At, other.End, around)
                && !Meet(label, other)
            );
    }

    private static Point Low(Box box) => new(box.MinX, box.MinY);

    private static Point High(Box box) => new(box.MaxX, box.MaxY);

    private static bool Crosses(Point from, Point to, Box box) =>
        PointsOn(new Edge(from, to), Math.Min(box.WidthMm, box.HeightMm) / 4).Any(box.Contains);

    private static bool Meet(PlacedLabel one, PlacedLabel other)
    {
        Vector along = one.End - one.At;
        Vector across = other.End - other.At;
        double turn = along.Cross(across);
        if (turn == 0)
        {
            return false;
        }

        // From one and the same place leaders go out like a fan.
        double here = (other.At - one.At).Cross(across) / turn;
        double there = (other.At - one.At).Cross(along) / turn;
        return here is > 0.05 and <= 1 && there is > 0.05 and <= 1;
    }

    private static IEnumerable<Point> PointsOn(Edge edge, double stepMm)
    {
        int count = Math.Max(1, (int)Math.Ceiling(edge.LengthMm / stepMm));
        return Enumerable.Range(0, count + 1).Select(i => edge.PointAt((double)i / count));
    }
}

/// <summary>Where words lie, and the leader to what they are about.</summary>
/// <param name="Words">The box of the words.</param>
/// <param name="Anchor">Which point of the words is next to the leader, so that it is whatever their width.</param>
/// <param name="At">What they are about: the leader's point.</param>
/// <param name="End">The leader's end at the words.</param>
public sealed record PlacedLabel(Box Words, TextAnchor Anchor, Point At, Point End)
{
    /// <summary>The anchor's place on the base line.</summary>
    public Point Foot =>
        new(
            Anchor switch
            {
                TextAnchor.Left => Words.MinX,
                TextAnchor.Middle => Words.Centre.X,
                _ => Words.MaxX,
            },
            Words.MinY
        );
}
