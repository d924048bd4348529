using System.Runtime.InteropServices;
using Flushback.Geometry.Polar;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>An outline about the centre pin, cut at its own breakpoints into slabs, and each slab into strips of material.</summary>
internal sealed class StripStack
{
    private readonly List<Slab> _slabs = [];
    private readonly List<Strip> _strips = [];
    private readonly List<double> _breaks = [];
    private readonly List<int> _active = [];
    private readonly List<(double Angle, int Piece)> _order = [];
    private double[] _keys = [];
    private int[] _sorted = [];

    /// <summary>A stretch of radii without a breakpoint inside.</summary>
    /// <param name="InnerMm">Where it begins.</param>
    /// <param name="OuterMm">Where it ends.</param>
    /// <param name="First">Its first strip.</param>
    /// <param name="Count">Number of its strips.</param>
    public readonly record struct Slab(double InnerMm, double OuterMm, int First, int Count);

    /// <summary>A stretch of material between two boundaries; -1 where one lies out of reach.</summary>
    /// <param name="Lower">Piece that bounds it from below.</param>
    /// <param name="Upper">Piece that bounds it from above.</param>
    public readonly record struct Strip(int Lower, int Upper);

    /// <summary>The slabs from the inside out.</summary>
    public ReadOnlySpan<Slab> Slabs => CollectionsMarshal.AsSpan(_slabs);

    /// <summary>The strips of a slab from the top down.</summary>
    public ReadOnlySpan<Strip> StripsOf(in Slab slab) =>
        CollectionsMarshal.AsSpan(_strips).Slice(slab.First, slab.Count);

    /// <summary>Cuts an outline anew.</summary>
    /// <param name="pieces">All its pieces.</param>
    /// <param name="upper">Upper boundaries among them that count, by index.</param>
    /// <param name="lower">Lower boundaries that count.</param>
    public void Build(ReadOnlySpan<RadialPiece> pieces, List<int> upper, List<int> lower)
    {
        int count = SortByInner(pieces, upper, lower);
        _slabs.Clear();
        _strips.Clear();
        _active.Clear();
        int next = 0;
        for (int i = 0; i + 1 < _breaks.Count; i++)
        {
            double inner = _breaks[i];
            double outer = _breaks[i + 1];
            Advance(pieces, _sorted.AsSpan(0, count), ref next, inner);
            if (outer > inner && _active.Count > 0)
            {
                int first = _strips.Count;
                AddStrips(pieces, (inner + outer) / 2);
                _slabs.Add(new Slab(inner, outer, first, _strips.Count - first));
            }
        }
    }

    private int SortByInner(ReadOnlySpan<RadialPiece> pieces, List<int> upper, List<int> lower)
    {
        int count = upper.Count + lower.Count;
        if (_keys.Length < count)
        {
            _keys = new double[2 * count];
            _sorted = new int[2 * count];
        }

        _breaks.Clear();
        for (int i = 0; i < count; i++)
        {
            _sorted[i] = i < upper.Count ? upper[i] : lower[i - upper.Count];
            ref readonly RadialPiece piece = ref pieces[_sorted[i]];
            _keys[i] = piece.InnerMm;
            _breaks.Add(piece.InnerMm);
            _breaks.Add(piece.OuterMm);
        }

        Array.Sort(_keys, _sorted, 0, count);
        _breaks.Sort();
        return count;
    }

    private void Advance(ReadOnlySpan<RadialPiece> pieces, ReadOnlySpan<int> sorted, ref int next, double radiusMm)
    {
        for (int i = _active.Count - 1; i >= 0; i--)
        {
            if (pieces[_active[i]].OuterMm <= radiusMm)
            {
                _active[i] = _active[^1];
                _active.RemoveAt(_active.Count - 1);
            }
        }

        while (next < sorted.Length && pieces[sorted[next]].InnerMm <= radiusMm)
        {
            if (pieces[sorted[next]].OuterMm > radiusMm)
            {
                _active.Add(sorted[next]);
            }

            next++;
        }
    }

    /// <summary>Pairs boundaries from the top down: an upper one opens a strip, the next lower one closes it.</summary>
    private void AddStrips(ReadOnlySpan<RadialPiece> pieces, double radiusMm)
    {
        _order.Clear();
        foreach (int piece in _active)
        {
            _order.Add((pieces[piece].AngleAt(radiusMm), piece));
        }

        _order.Sort(static (a, b) => b.Angle.CompareTo(a.Angle));
        int open = -1;
        foreach ((_, int piece) in _order)
        {
            if (pieces[piece].IsOutward)
            {
                _strips.Add(new Strip(piece, open));
                open = -1;
            }
            else
            {
                open = piece;
            }
        }

        if (open >= 0)
        {
            _strips.Add(new Strip(-1, open));
        }
    }
}
