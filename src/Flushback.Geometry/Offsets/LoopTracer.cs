using System.Collections.Immutable;

namespace Flushback.Geometry.Offsets;

/// <summary>Follows pieces from node to node into closed loops, each passing through a node once.</summary>
/// <remarks>
/// Where several pieces leave a node, the sharpest turn to the left is taken, so that areas which only touch there come
/// apart. A piece kept by the tolerance alone, where curves touch, leads nowhere or back to where it would have come
/// anyway: it is dropped, and kept for who wants to know.
/// </remarks>
internal sealed class LoopTracer
{
    /// <summary>How far along its bend a piece is looked at to tell its direction from one that leaves the same way.</summary>
    private const double LookAheadMm = 1e-3;

    private readonly List<Piece> _pieces;
    private readonly ImmutableArray<Edge> _curves;
    private readonly Dictionary<int, List<int>> _leaving = [];
    private readonly List<int> _path = [];
    private readonly Dictionary<int, int> _placeOnPath = [];

    public LoopTracer(List<Piece> pieces, ImmutableArray<Edge> curves)
    {
        _pieces = pieces;
        _curves = curves;
        for (int i = 0; i < pieces.Count; i++)
        {
            if (!_leaving.TryGetValue(pieces[i].Start, out List<int>? leaving))
            {
                _leaving[pieces[i].Start] = leaving = [];
            }

            leaving.Add(i);
        }
    }

    /// <summary>The pieces that were found to close no loop, once the loops have been asked for.</summary>
    public List<Piece> Dropped { get; } = [];

    /// <summary>The loops, each in order of travel. To be asked once: it uses the pieces up.</summary>
    public List<ImmutableArray<Piece>> Loops()
    {
        List<ImmutableArray<Piece>> loops = [];
        foreach (Piece first in _pieces)
        {
            while (_leaving[first.Start].Count > 0)
            {
                Trace(first.Start, loops);
            }
        }

        return loops;
    }

    /// <summary>Walks from a node until every way is used up, and cuts a loop off the walk wherever it meets itself.</summary>
    private void Trace(int start, List<ImmutableArray<Piece>> loops)
    {
        _path.Clear();
        _placeOnPath.Clear();
        _placeOnPath[start] = 0;
        int here = start;
        while (TryLeave(here) || _path.Count > 0)
        {
            int next = _pieces[_path[^1]].End;
            if (next == here)
            {
                // No way led on from here: the last piece is none of a border.
                here = BackUp();
            }
            else if (_placeOnPath.TryGetValue(next, out int place))
            {
                loops.Add(CutOff(place));
                here = next;
            }
            else
            {
                _placeOnPath[next] = _path.Count;
                here = next;
            }
        }
    }

    private int BackUp()
    {
        Piece last = _pieces[_path[^1]];
        _path.RemoveAt(_path.Count - 1);
        _placeOnPath.Remove(last.End);
        Dropped.Add(last);
        return last.Start;
    }

    private ImmutableArray<Piece> CutOff(int place)
    {
        ImmutableArray<Piece> loop = [.. _path[place..].Select(index => _pieces[index])];
        _path.RemoveRange(place, _path.Count - place);
        foreach (Piece piece in loop[..^1])
        {
            _placeOnPath.Remove(piece.End);
        }

        return loop;
    }

    /// <summary>Takes the sharpest turn to the left that is still open.</summary>
    private bool TryLeave(int node)
    {
        if (!_leaving.TryGetValue(node, out List<int>? leaving) || leaving.Count == 0)
        {
            return false;
        }

        int best = leaving[0];
        if (leaving.Count > 1 && _path.Count > 0)
        {
            double back = Back(_pieces[_path[^1]]);
            best = leaving.MinBy(index => new Angle(back - Ahead(_pieces[index])).Positive.Radians);
        }

        leaving.Remove(best);
        _path.Add(best);
        return true;
    }

    /// <summary>Direction of a piece a little way from its start, in radians.</summary>
    private double Ahead(Piece piece)
    {
        Edge curve = _curves[piece.Curve];
        return curve.TangentAt(piece.From).Direction.Radians + (Curvature.Of(curve) * LookAheadMm / 2);
    }

    /// <summary>Direction of a piece a little way before its end, seen from there, in radians.</summary>
    private double Back(Piece piece)
    {
        Edge curve = _curves[piece.Curve];
        return (-curve.TangentAt(piece.To)).Direction.Radians - (Curvature.Of(curve) * LookAheadMm / 2);
    }
}
