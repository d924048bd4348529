using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Tolerances.Drawing;

/// <summary>Where the vertices of a part go when a face of it is off by a millimetre.</summary>
/// <remarks>
/// All of a face goes along its one normal. A corner goes to where the moved face meets the one beside it, so that it stays
/// on that one; a round, or the hollow of the notch, goes as a whole with its corner, and keeps its radius.
/// </remarks>
internal sealed class FaceMotion
{
    // Sine of the angle between two faces under which their corner is no place to slide to.
    private const double LeastSine = 0.25;

    // Cosine to the face beyond which an edge that bears its name is the round at its end.
    private const double LeastCosine = 0.8;

    private readonly Workpiece _piece;
    private readonly Site _face;
    private readonly FaceRun _run;
    private readonly Deviation _deviation;
    private readonly Vector _normal;
    private readonly double _frontMm;
    private readonly double _lengthMm;
    private readonly Vector[] _moved;

    private FaceMotion(Workpiece piece, Site face, FaceRun run, Deviation deviation)
    {
        (_piece, _face, _run, _deviation) = (piece, face, run, deviation);
        _normal = NormalOf(piece, run);
        (double first, double last) = (Along(run.First), Along(run.Last + 1));
        (_frontMm, _lengthMm) = face.Part == Part.Blade ? (first, last - first) : (last, first - last);
        _moved = new Vector[piece.Count];
    }

    /// <summary>The displacement of each vertex for one millimetre.</summary>
    /// <param name="piece">The part.</param>
    /// <param name="face">The face; the part has it.</param>
    /// <param name="deviation">Offset or tilt.</param>
    /// <param name="rearmostXMm">The spring's underside is a face as far back as here, where the tang bears on it.</param>
    public static ImmutableArray<Vector> Of(Workpiece piece, Site face, Deviation deviation, double rearmostXMm)
    {
        FaceMotion motion = new(piece, face, Varied(piece, face, rearmostXMm), deviation);
        motion.MoveFace();
        if (face.Blade != BladeFace.Kick)
        {
            motion.MoveCorner(motion._run.First, -1);
            motion.MoveCorner(motion._run.Last, 1);
        }

        return [.. motion._moved];
    }

    /// <summary>The edges that vary as one: without the rounds at the ends, and of the kick the round alone.</summary>
    private static FaceRun Varied(Workpiece piece, Site face, double rearmostXMm)
    {
        FaceRun run = piece.RunOf(face)!.Value;
        (int first, int last) = (run.First, run.Last);
        if (face.Blade is BladeFace.Kick)
        {
            return new FaceRun(first, 1);
        }

        if (face.Blade is BladeFace.Run)
        {
            return run;
        }

        if (face.Spring == SpringFace.Underside)
        {
            for (first = last; first > run.First && piece.EdgeAt(first).Start.X > rearmostXMm; first--) { }
        }

        Vector normal = NormalOf(piece, new FaceRun(first, last - first + 1));
        for (; first < last && piece.EdgeAt(first).OutwardNormalAt(0).Dot(normal) < LeastCosine; first++) { }

        for (; first < last && piece.EdgeAt(last).OutwardNormalAt(1).Dot(normal) < LeastCosine; last--) { }

        return new FaceRun(first, last - first + 1);
    }

    /// <summary>The normal of the longest edge; of a kick, which is a round, where it leaves the closed face.</summary>
    private static Vector NormalOf(Workpiece piece, FaceRun run)
    {
        Edge longest = Enumerable.Range(run.First, run.Count).Select(piece.EdgeAt).MaxBy(edge => edge.LengthMm);
        return piece.SiteAt(run.First).Blade == BladeFace.Kick
            ? longest.OutwardNormalAt(0)
            : longest.OutwardNormalAt(0.5);
    }

    private void MoveFace()
    {
        for (int vertex = _run.First; vertex <= _run.Last + 1; vertex++)
        {
            _moved[_piece.Around(vertex)] = OwnAt(vertex);
        }
    }

    /// <summary>Moves what lies between an end of the face and the edge beside it, going one way along the outline.</summary>
    private void MoveCorner(int end, int step)
    {
        int beside = end + step;
        while (IsRound(_piece.SiteAt(beside)) && Math.Abs(beside - end) < _piece.Count)
        {
            beside += step;
        }

        bool isBefore = step < 0;
        int vertex = isBefore ? end : end + 1;
        int lastVertex = isBefore ? beside + 1 : beside;
        Vector ownNormal = _piece.EdgeAt(end).OutwardNormalAt(isBefore ? 0 : 1);
        Vector otherNormal = _piece.EdgeAt(beside).OutwardNormalAt(isBefore ? 1 : 0);
        Vector moved = CornerMotion(OwnAt(vertex), ownNormal, otherNormal, _piece.SiteAt(beside));
        for (int v = vertex; ; v += step)
        {
            _moved[_piece.Around(v)] = moved;
            if (v == lastVertex)
            {
                return;
            }
        }
    }

    /// <summary>On the moved carrier of this face and the unmoved one of the other: two lines meet (elementary).</summary>
    private static Vector CornerMotion(Vector own, Vector ownNormal, Vector otherNormal, Site other)
    {
        double sine = ownNormal.Cross(otherNormal);
        if (Math.Abs(sine) < LeastSine)
        {
            // One runs on into the other: the end goes square, shared where the other face varies too.
            return ToleranceList.Faces.Contains(other) ? own * 0.5 : own;
        }

        return otherNormal.Right * (own.Dot(ownNormal) / sine);
    }

    private Vector OwnAt(int vertex)
    {
        if (_face.Blade == BladeFace.Run)
        {
            return vertex <= _run.Last
                ? _piece.EdgeAt(vertex).OutwardNormalAt(0)
                : _piece.EdgeAt(_run.Last).OutwardNormalAt(1);
        }

        double share = (Along(vertex) - _frontMm) / _lengthMm;
        return _deviation == Deviation.Tilt ? _normal * (1 - (2 * share)) : _normal;
    }

    private double Along(int vertex) => (_piece.EdgeAt(vertex).Start - Point.Origin).Dot(_normal.Left);

    private bool IsRound(Site site) =>
        site == _face
        || site.Blade is BladeFace.NotchCorner or BladeFace.OpenCorner or BladeFace.ClosedCorner or BladeFace.Kick
        || site.Spring == SpringFace.NoseCorner;
}
