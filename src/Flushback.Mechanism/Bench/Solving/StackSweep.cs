using System.Runtime.InteropServices;
using Flushback.Geometry.Polar;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>
/// Goes through the radii about the centre pin from the inside out. Between two neighbouring breakpoints the blade is a
/// stack of strips, each with one lower and one upper boundary, and so is the spring; each strip of the one against each
/// strip of the other forbids one interval of spring rotation.
/// </summary>
/// <remarks>
/// Needed where the nose lies under an overhanging shoulder: the rotations forbidden by the tang below it and by the
/// shoulder above it are then two blocks with a free interval between.
/// </remarks>
internal sealed class StackSweep(SpringSides spring)
{
    private readonly RadialPiece[] _spring =
    [
        .. spring.FrontLower.Concat(spring.FrontUpper).OrderBy(piece => piece.InnerMm),
    ];

    private readonly List<RadialPiece> _blade = [];
    private readonly List<double> _breaks = [];
    private readonly List<int> _activeBlade = [];
    private readonly List<int> _activeSpring = [];
    private readonly List<Strip> _bladeStrips = [];
    private readonly List<Strip> _springStrips = [];
    private readonly List<(double Angle, int Piece)> _order = [];
    private readonly ForbiddenRotations _forbidden = new();
    private double[] _keys = [];
    private int[] _places = [];

    /// <summary>Highest support and lowest ceiling of the free interval near a rotation; crossed where none is near.</summary>
    public (Touch Support, Touch Ceiling) Bounds(List<RadialPiece> upper, List<RadialPiece> lower, double near)
    {
        _forbidden.Clear();
        Visit(upper, lower);
        return _forbidden.GapNear(near);
    }

    /// <summary>A stretch of material between two boundaries; -1 where one lies out of reach.</summary>
    private readonly record struct Strip(int Lower, int Upper);

    private void Visit(List<RadialPiece> upper, List<RadialPiece> lower)
    {
        SortByInner(upper, lower);
        ReadOnlySpan<RadialPiece> blade = CollectionsMarshal.AsSpan(_blade);
        ReadOnlySpan<RadialPiece> springs = _spring;
        FindBreaks(blade, springs);

        _activeBlade.Clear();
        _activeSpring.Clear();
        int nextBlade = 0;
        int nextSpring = 0;
        for (int i = 0; i + 1 < _breaks.Count; i++)
        {
            double inner = _breaks[i];
            double outer = _breaks[i + 1];
            Advance(blade, _activeBlade, ref nextBlade, inner);
            Advance(springs, _activeSpring, ref nextSpring, inner);
            if (outer <= inner || _activeBlade.Count == 0 || _activeSpring.Count == 0)
            {
                continue;
            }

            double middle = (inner + outer) / 2;
            BuildStrips(blade, _activeBlade, middle, _bladeStrips);
            BuildStrips(springs, _activeSpring, middle, _springStrips);
            foreach (Strip bladeStrip in _bladeStrips)
            {
                foreach (Strip springStrip in _springStrips)
                {
                    if (bladeStrip.Upper < 0 || springStrip.Lower < 0)
                    {
                        continue;
                    }

                    Forbid(blade, springs, bladeStrip, springStrip, inner, outer);
                }
            }
        }
    }

    private void Forbid(
        ReadOnlySpan<RadialPiece> blade,
        ReadOnlySpan<RadialPiece> springs,
        Strip bladeStrip,
        Strip springStrip,
        double innerMm,
        double outerMm
    )
    {
        Touch to = Touch.None;
        Touching.Raise(ref to, blade[bladeStrip.Upper], springs[springStrip.Lower], innerMm, outerMm);

        // A strip whose lower boundary lies out of reach is solid all the way down.
        Touch from = Touch.None;
        if (bladeStrip.Lower >= 0 && springStrip.Upper >= 0)
        {
            from = Touch.Unbounded;
            Touching.Lower(ref from, blade[bladeStrip.Lower], springs[springStrip.Upper], innerMm, outerMm);
        }

        _forbidden.Add(from, to);
    }

    /// <summary>Sorts keys and places, not the pieces themselves, which are large.</summary>
    private void SortByInner(List<RadialPiece> upper, List<RadialPiece> lower)
    {
        int count = upper.Count + lower.Count;
        if (_keys.Length < count)
        {
            _keys = new double[2 * count];
            _places = new int[2 * count];
        }

        for (int i = 0; i < count; i++)
        {
            _keys[i] = PieceAt(i).InnerMm;
            _places[i] = i;
        }

        Array.Sort(_keys, _places, 0, count);
        _blade.Clear();
        for (int i = 0; i < count; i++)
        {
            _blade.Add(PieceAt(_places[i]));
        }

        RadialPiece PieceAt(int place) => place < upper.Count ? upper[place] : lower[place - upper.Count];
    }

    private void FindBreaks(ReadOnlySpan<RadialPiece> blade, ReadOnlySpan<RadialPiece> springs)
    {
        _breaks.Clear();
        foreach (ref readonly RadialPiece piece in blade)
        {
            _breaks.Add(piece.InnerMm);
            _breaks.Add(piece.OuterMm);
        }

        foreach (ref readonly RadialPiece piece in springs)
        {
            _breaks.Add(piece.InnerMm);
            _breaks.Add(piece.OuterMm);
        }

        _breaks.Sort();
    }

    private static void Advance(ReadOnlySpan<RadialPiece> pieces, List<int> active, ref int next, double radiusMm)
    {
        for (int i = active.Count - 1; i >= 0; i--)
        {
            if (pieces[active[i]].OuterMm <= radiusMm)
            {
                active[i] = active[^1];
                active.RemoveAt(active.Count - 1);
            }
        }

        while (next < pieces.Length && pieces[next].InnerMm <= radiusMm)
        {
            if (pieces[next].OuterMm > radiusMm)
            {
                active.Add(next);
            }

            next++;
        }
    }

    /// <summary>Pairs boundaries from the top down: an upper one opens a strip, the next lower one closes it.</summary>
    private void BuildStrips(ReadOnlySpan<RadialPiece> pieces, List<int> active, double radiusMm, List<Strip> strips)
    {
        _order.Clear();
        foreach (int piece in active)
        {
            _order.Add((pieces[piece].AngleAt(radiusMm), piece));
        }

        _order.Sort(static (a, b) => b.Angle.CompareTo(a.Angle));
        strips.Clear();
        int open = -1;
        foreach ((_, int piece) in _order)
        {
            if (pieces[piece].IsOutward)
            {
                strips.Add(new Strip(piece, open));
                open = -1;
            }
            else
            {
                open = piece;
            }
        }

        if (open >= 0)
        {
            strips.Add(new Strip(-1, open));
        }
    }
}
