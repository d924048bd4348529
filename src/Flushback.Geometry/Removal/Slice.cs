using Flushback.Geometry.Crossings;

namespace Flushback.Geometry.Removal;

/// <summary>Takes off what lies on the right of a cutting curve along one stretch of an outline. Exact on lines and arcs.</summary>
/// <remarks>
/// The curve meets the carriers of the edges in closed form; each edge that crosses it is trimmed there, and what lies
/// beyond it between two crossings is replaced by the curve itself.
/// </remarks>
public static class Slice
{
    // A piece no farther beyond the curve than this lies on it.
    private const double OnCurveMm = 1e-10;

    private const double NoFraction = 1e-13;

    /// <summary>Slices a stretch of an outline.</summary>
    /// <param name="outline">The outline, counter-clockwise.</param>
    /// <param name="curve">What the tool leaves.</param>
    /// <param name="from">Where the stretch begins.</param>
    /// <param name="to">Where it ends, in the direction of travel.</param>
    /// <param name="reach">How far the tool goes beyond the stretch.</param>
    /// <returns>What is left, or why nothing was cut; exactly one of the two.</returns>
    public static (CutOutline? Cut, CutFailure? Failure) Of(
        Outline outline,
        CuttingCurve curve,
        OutlinePlace from,
        OutlinePlace to,
        SliceReach reach
    )
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(reach);
        (from, to) = (from.Leaving(outline), to.Leaving(outline));
        List<Piece> pieces = PiecesOf(outline, curve, from, to);
        int start = Math.Max(0, pieces.FindIndex(piece => piece.IsAtOrAfter(from)));
        int count = 0;
        while (count < pieces.Count && !pieces[(start + count) % pieces.Count].IsAtOrAfter(to))
        {
            count++;
        }

        Wall? before = null;
        Wall? after = null;
        if (reach.GoesOn)
        {
            (int added, before) = Extent(pieces, start - 1, -1, reach.WallBefore);
            start = ((start - added) % pieces.Count + pieces.Count) % pieces.Count;
            count += added;
            (added, after) = Extent(pieces, start + count, 1, reach.WallAfter);
            count += added;
        }

        if (count >= pieces.Count && pieces.TrueForAll(piece => piece.IsTaken))
        {
            return (null, CutFailure.TakesEverything);
        }

        return Rebuild(outline, curve, pieces, start, count, before, after);
    }

    /// <summary>A neighbour that ends the cut where the outline turns outward, prolonged until it meets the curve.</summary>
    private readonly record struct Wall(int EdgeIndex);

    /// <summary>A piece of an edge between two crossings, and whether it lies beyond the curve.</summary>
    private readonly record struct Piece(int EdgeIndex, double From, double To, bool IsTaken)
    {
        public bool IsAtOrAfter(OutlinePlace place) =>
            EdgeIndex == place.EdgeIndex && From >= place.Fraction - NoFraction;

        public Edge Of(Outline outline) =>
            From <= 0 && To >= 1 ? outline.Edges[EdgeIndex] : outline.Edges[EdgeIndex].Part(From, To);
    }

    private static List<Piece> PiecesOf(Outline outline, CuttingCurve curve, OutlinePlace from, OutlinePlace to)
    {
        List<Piece> pieces = [];
        List<double> cuts = [];
        for (int i = 0; i < outline.Edges.Length; i++)
        {
            Edge edge = outline.Edges[i];
            cuts.Clear();
            cuts.AddRange([0, 1]);
            AddPlace(from, i);
            AddPlace(to, i);
            int count = Carriers.CommonPoints(edge, curve.Carrier, out Point first, out Point second);
            AddCrossing(edge, first, count > 0);
            AddCrossing(edge, second, count > 1);
            cuts.Sort();
            for (int k = 1; k < cuts.Count; k++)
            {
                if (cuts[k] - cuts[k - 1] > NoFraction)
                {
                    Point middle = edge.PointAt((cuts[k] + cuts[k - 1]) / 2);
                    pieces.Add(new Piece(i, cuts[k - 1], cuts[k], curve.DepthMm(middle) > OnCurveMm));
                }
            }
        }

        return pieces;

        void AddPlace(OutlinePlace place, int edge)
        {
            if (place.EdgeIndex == edge && place.Fraction is > 0 and < 1)
            {
                cuts.Add(place.Fraction);
            }
        }

        void AddCrossing(in Edge edge, Point at, bool exists)
        {
            double fraction = exists ? EdgePosition.FractionAt(edge, at) : -1;
            if (fraction is > 0 and < 1)
            {
                cuts.Add(fraction);
            }
        }
    }

    /// <summary>How many pieces beyond an end of the stretch are taken too, and the wall that ends them.</summary>
    private static (int Count, Wall? Wall) Extent(List<Piece> pieces, int next, int direction, int? wall)
    {
        for (int count = 0; count < pieces.Count; count++)
        {
            Piece piece = pieces[((next + (direction * count)) % pieces.Count + pieces.Count) % pieces.Count];
            if (!piece.IsTaken)
            {
                return (count, null);
            }

            if (piece.EdgeIndex == wall)
            {
                return (count, new Wall(piece.EdgeIndex));
            }
        }

        return (pieces.Count, null);
    }

    private static (CutOutline? Cut, CutFailure? Failure) Rebuild(
        Outline outline,
        CuttingCurve curve,
        List<Piece> pieces,
        int start,
        int count,
        Wall? before,
        Wall? after
    )
    {
        bool TakenAt(int step) => step >= 0 && step < count && pieces[(start + step) % pieces.Count].IsTaken;
        ChainEdit edit = new();
        bool tookAny = false;
        for (int step = 0; step < pieces.Count; step++)
        {
            if (!TakenAt(step))
            {
                Piece kept = pieces[(start + step) % pieces.Count];
                edit.Add(kept.Of(outline), kept.EdgeIndex);
                continue;
            }

            int first = step;
            while (TakenAt(step + 1))
            {
                step++;
            }

            Point from = pieces[(start + first) % pieces.Count].Of(outline).Start;
            Point to = pieces[(start + step) % pieces.Count].Of(outline).End;
            if (
                !Replacement(
                    outline,
                    curve,
                    from,
                    to,
                    first == 0 ? before : null,
                    step == count - 1 ? after : null,
                    out var made
                )
            )
            {
                return (null, CutFailure.NeighbourNotMet);
            }

            tookAny = true;
            made.ForEach(piece => edit.Add(piece.Edge, piece.Source));
        }

        return tookAny ? (edit.Finish(outline), null) : (null, CutFailure.NothingTaken);
    }

    /// <summary>The cut that replaces a run of pieces, with the prolonged neighbours where walls end it.</summary>
    private static bool Replacement(
        Outline outline,
        CuttingCurve curve,
        Point from,
        Point to,
        Wall? before,
        Wall? after,
        out List<(Edge Edge, int Source)> made
    )
    {
        made = [];
        if (before is { } first)
        {
            if (MeetOf(outline.Edges[first.EdgeIndex], curve, from) is not { } meet)
            {
                return false;
            }

            made.Add((Prolonged(outline.Edges[first.EdgeIndex], from, meet), first.EdgeIndex));
            from = meet;
        }

        (Edge Edge, int Source)? last = null;
        if (after is { } second)
        {
            if (MeetOf(outline.Edges[second.EdgeIndex], curve, to) is not { } meet)
            {
                return false;
            }

            last = (Prolonged(outline.Edges[second.EdgeIndex], meet, to), second.EdgeIndex);
            to = meet;
        }

        made.Add((curve.Between(from, to), CutOutline.New));
        if (last is { } piece)
        {
            made.Add(piece);
        }

        return true;
    }

    private static Point? MeetOf(in Edge wall, CuttingCurve curve, Point near)
    {
        int count = Carriers.CommonPoints(wall, curve.Carrier, out Point first, out Point second);
        return count switch
        {
            0 => null,
            1 => first,
            _ => first.DistanceTo(near) <= second.DistanceTo(near) ? first : second,
        };
    }

    /// <summary>A piece of the wall's carrier between two points, in the wall's direction of travel.</summary>
    private static Edge Prolonged(in Edge wall, Point from, Point to)
    {
        if (!wall.IsArc)
        {
            return new Edge(from, to);
        }

        Vector start = from - wall.Centre;
        Vector end = to - wall.Centre;
        return Edge.Arc(from, to, new Angle(Math.Atan2(start.Cross(end), start.Dot(end))));
    }
}
