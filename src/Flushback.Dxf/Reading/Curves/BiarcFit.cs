using Flushback.Geometry;
using Flushback.Geometry.Distances;

namespace Flushback.Dxf.Reading.Curves;

/// <summary>Lays pairs of arcs along a smooth curve, tangent to it and to each other, within a tolerance.</summary>
/// <remarks>
/// A biarc joins two points with given directions by two arcs that meet without a kink; of the family the one with equal
/// tangent lengths is taken: |v - d (t0 + t1)| = 2 d (K. M. Bolton, "Biarc curves", 1975, from memory). A piece whose
/// biarc strays too far is halved; the error falls with the third power of the length, so few halvings are needed.
/// </remarks>
internal sealed class BiarcFit(double toleranceMm, int mostEdges)
{
    /// <summary>Points of a piece that are measured. Between them a smooth error hardly grows; see <see cref="Caution"/>.</summary>
    private const int Samples = 16;

    /// <summary>Share of the tolerance that may be used at the measured points.</summary>
    private const double Caution = 0.9;

    /// <summary>Halvings after which a piece is shorter than anything: a millionth of a millionth of the whole.</summary>
    private const int Deepest = 40;

    /// <summary>A bend that rises less above its chord is no bend.</summary>
    private const double StraightMm = 1e-9;

    /// <summary>Adds the arcs along a piece; false when they would be too many.</summary>
    public bool TryAppend(SmoothPiece piece, List<Edge> edges) => TryAppend(piece, 0, 1, edges, 0);

    private bool TryAppend(SmoothPiece piece, double from, double to, List<Edge> edges, int depth)
    {
        if (edges.Count >= mostEdges)
        {
            return false;
        }

        Point start =
            edges.Count > 0 && from == 0 && edges[^1].End.IsWithin(toleranceMm, piece.At(0))
                ? edges[^1].End
                : piece.At(from);
        if (TryBiarc(piece, from, to, start, out Edge first, out Edge second) || depth >= Deepest)
        {
            Add(first, second, edges);
            return true;
        }

        double middle = (from + to) / 2;
        return TryAppend(piece, from, middle, edges, depth + 1) && TryAppend(piece, middle, to, edges, depth + 1);
    }

    private static void Add(in Edge first, in Edge second, List<Edge> edges)
    {
        bool isOneLine = IsStraight(first) && IsStraight(second);
        if (isOneLine)
        {
            edges.Add(new Edge(first.Start, second.End));
        }
        else
        {
            edges.Add(first);
            edges.Add(second);
        }
    }

    private bool TryBiarc(SmoothPiece piece, double from, double to, Point start, out Edge first, out Edge second)
    {
        Point end = piece.At(to);
        Vector t0 = piece.DirectionAt(from);
        Vector t1 = piece.DirectionAt(to);
        Vector v = end - start;
        first = new Edge(start, start.MidpointTo(end));
        second = new Edge(first.End, end);
        if (v.Length <= StraightMm)
        {
            // Nothing to bend, unless the curve goes away and comes back.
            return piece.At((from + to) / 2).IsWithin(toleranceMm, start);
        }

        // More than a quarter turn, or setting off backwards: halve it first.
        if (t0.Dot(t1) < 0 || v.Dot(t0) <= 0 || v.Dot(t1) <= 0)
        {
            return false;
        }

        Vector sum = t0 + t1;
        double along = v.Dot(sum);
        double bend = 2 * (1 - t0.Dot(t1));
        double d = v.LengthSquared / (along + Math.Sqrt((along * along) + (bend * v.LengthSquared)));
        Point joint = (start + (t0 * d)).MidpointTo(end - (t1 * d));
        first = new Edge(start, joint, BulgeFrom(t0, joint - start));
        second = new Edge(joint, end, BulgeFrom(end - joint, t1));
        return IsNear(piece, from, to, first, second);
    }

    /// <summary>The bulge of an arc whose chord and tangent make an angle: the tangent of half of that angle.</summary>
    private static double BulgeFrom(Vector a, Vector b) => a.Cross(b) / ((a.Length * b.Length) + a.Dot(b));

    private bool IsNear(SmoothPiece piece, double from, double to, in Edge first, in Edge second)
    {
        for (int i = 1; i < Samples; i++)
        {
            Point p = piece.At(from + ((to - from) * i / Samples));
            double off = Math.Min(PointDistance(p, first), PointDistance(p, second));
            if (!(off <= Caution * toleranceMm))
            {
                return false;
            }
        }

        return true;
    }

    private static double PointDistance(Point p, in Edge edge) =>
        Distance.Between(p, IsStraight(edge) ? edge with { Bulge = 0 } : edge).DistanceMm;

    private static bool IsStraight(in Edge edge) => Math.Abs(edge.Bulge) * edge.Chord.Length / 2 < StraightMm;
}
