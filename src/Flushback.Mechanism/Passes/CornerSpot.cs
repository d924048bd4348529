using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes;

/// <summary>Where a corner lies on an outline: the edges on either side and how many small ones form it.</summary>
/// <param name="Before">Index of the edge before the corner.</param>
/// <param name="Count">Edges that form the corner; none where two faces meet at a point.</param>
/// <param name="After">Index of the edge after it.</param>
internal readonly record struct CornerSpot(int Before, int Count, int After)
{
    // A straight edge longer than this is a face beside a corner, whatever it is called.
    private const double LongestStraightMm = 1;

    // A convex arc of the shoulder larger than this is the shoulder itself.
    private const double LargestRadiusMm = 2;

    // Sine of the turn up to which a face meets the round of its corner without a corner of its own: a hollow face meets it
    // at a slight one. A quarter is some fifteen degrees.
    private const double Smooth = 0.25;

    /// <summary>A corner of a part; null when there is none of that name.</summary>
    public static CornerSpot? Of(Workpiece piece, Site corner)
    {
        if (corner.Blade == BladeFace.Shoulder)
        {
            return OnTopOf(piece, corner);
        }

        if (corner.Spring == SpringFace.Underside)
        {
            return BehindPadOf(piece, corner);
        }

        return piece.RunOf(corner) is { } run ? Around(piece, run) : BetweenFaces(piece, corner);
    }

    /// <summary>The radius of the round that already sits there, when it is a single arc that passes into both neighbours.</summary>
    public double? RadiusIn(Workpiece piece)
    {
        Edge arc = piece.EdgeAt(Before + 1);
        return Count == 1 && arc.Bulge > 0 && arc.IsArc && IsSmooth(piece, Before) && IsSmooth(piece, Before + 1)
            ? arc.RadiusMm
            : null;
    }

    /// <summary>How far the outline turns there, from the end of one neighbour to the start of the other; positive when it points out.</summary>
    public double TurnIn(Workpiece piece)
    {
        Vector arriving = piece.EdgeAt(Before).TangentAt(1);
        Vector leaving = piece.EdgeAt(After).TangentAt(0);
        return Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving));
    }

    /// <summary>The place of the corner, or the middle of the edges that form it.</summary>
    public Point Middle(Workpiece piece) => piece.EdgeAt(Before).End.MidpointTo(piece.EdgeAt(After).Start);

    private static bool IsSmooth(Workpiece piece, int edge)
    {
        Vector arriving = piece.EdgeAt(edge).TangentAt(1);
        Vector leaving = piece.EdgeAt(edge + 1).TangentAt(0);
        return Math.Abs(arriving.Cross(leaving)) < Smooth && arriving.Dot(leaving) > 0;
    }

    private static CornerSpot Around(Workpiece piece, FaceRun run)
    {
        (int first, int last) = (run.First, run.Last);
        while (first <= last && IsFace(piece.EdgeAt(first)))
        {
            first++;
        }

        while (last >= first && IsFace(piece.EdgeAt(last)))
        {
            last--;
        }

        // All straight and long: the corner is where the run begins.
        first = first > last ? run.First : first;
        last = Math.Max(last, first - 1);
        return new CornerSpot(piece.Around(first - 1), last - first + 1, piece.Around(last + 1));
    }

    private static bool IsFace(Edge edge) => !edge.IsArc && edge.LengthMm > LongestStraightMm;

    private static CornerSpot? OnTopOf(Workpiece piece, Site shoulder)
    {
        if (piece.RunOf(shoulder) is not { } run)
        {
            return null;
        }

        int rounds = 0;
        while (rounds < run.Count - 1 && IsRound(piece.EdgeAt(run.First + rounds)))
        {
            rounds++;
        }

        return new CornerSpot(piece.Around(run.First - 1), rounds, piece.Around(run.First + rounds));
    }

    /// <summary>Where the pad ends and the underside rises to the belly; none where it runs out into it by a long round.</summary>
    private static CornerSpot? BehindPadOf(Workpiece piece, Site underside)
    {
        if (piece.RunOf(underside) is not { } run)
        {
            return null;
        }

        for (int i = run.Last; i >= run.First; i--)
        {
            Edge edge = piece.EdgeAt(i);
            if (edge.Bulge > 0 && Math.Sin(edge.Sweep.Radians) > Smooth)
            {
                return IsRound(edge) && i > run.First
                    ? new CornerSpot(piece.Around(i - 1), 1, piece.Around(i + 1))
                    : null;
            }

            if (i > run.First && piece.EdgeAt(i - 1).TangentAt(1).Cross(edge.TangentAt(0)) > Smooth)
            {
                return new CornerSpot(piece.Around(i - 1), 0, piece.Around(i));
            }
        }

        return null;
    }

    private static bool IsRound(Edge edge) => edge.Bulge > 0 && edge.IsArc && edge.RadiusMm <= LargestRadiusMm;

    private static CornerSpot? BetweenFaces(Workpiece piece, Site corner)
    {
        for (int i = 0; i < piece.Count; i++)
        {
            if (Meet(corner, piece.SiteAt(i - 1), piece.Sites[i]))
            {
                return new CornerSpot(piece.Around(i - 1), 0, i);
            }
        }

        return null;
    }

    private static bool Meet(Site corner, Site before, Site after) =>
        corner.Spring == SpringFace.NoseCorner
            ? before.Spring == SpringFace.Underside && after.Spring == SpringFace.EndFace
            : corner.Blade switch
            {
                BladeFace.OpenCorner => before.Blade == BladeFace.OpenFlat
                    && after.Blade is BladeFace.HalfStopFace or BladeFace.Run,
                BladeFace.ClosedCorner => before.Blade is BladeFace.HalfStopFace or BladeFace.Run
                    && after.Blade == BladeFace.ClosedFace,
                BladeFace.Kick => before.Blade == BladeFace.ClosedFace && after.Blade != BladeFace.ClosedFace,
                _ => false,
            };
}
