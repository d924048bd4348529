using System.Collections.Immutable;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Widths;

/// <summary>Finds where an area is narrow.</summary>
/// <remarks>
/// A narrow place is one where the distance across the area, from border to border, does not shrink as either end moves a
/// little along its border, either way. So metal between two holes has one, a waist has one, and a tongue with parallel
/// sides has one all along; a wedge that runs out to a point has none, however thin its tip, and neither has a disc or
/// anything else that is only thinner towards its ends. Exact on lines and arcs. Pairs of stretches that lie too far apart
/// or do not face each other are left out by their boxes and directions.
/// </remarks>
internal sealed class WidthSearch
{
    /// <summary>So many narrow places are kept: a drawing with more is narrow throughout.</summary>
    private const int MostKept = 20_000;

    private readonly Border _border;
    private readonly BorderTree _tree;
    private readonly double _limitMm;
    private readonly bool _wantsLeast;
    private readonly CancellationToken _ct;
    private readonly List<Width> _below = [];
    private Width? _least;

    private WidthSearch(Border border, double limitMm, bool wantsLeast, CancellationToken ct)
    {
        _border = border;
        _tree = new BorderTree(border);
        _limitMm = limitMm;
        _wantsLeast = wantsLeast;
        _ct = ct;
    }

    /// <summary>The narrow places below a limit, in no particular order, and the narrowest of all; null when there is none.</summary>
    public static (Width? Least, ImmutableArray<Width> Below) In(Border border, double limitMm, CancellationToken ct)
    {
        WidthSearch search = new(border, limitMm, wantsLeast: true, ct);
        search.Run();
        return (search._least, [.. search._below]);
    }

    /// <summary>The narrow places below a limit only.</summary>
    public static ImmutableArray<Width> Below(Border border, double limitMm, CancellationToken ct)
    {
        WidthSearch search = new(border, limitMm, wantsLeast: false, ct);
        search.Run();
        return [.. search._below];
    }

    /// <summary>No place wider than this is of interest any more.</summary>
    private double ReachMm => _wantsLeast ? Math.Max(_limitMm, _least?.Mm ?? double.PositiveInfinity) : _limitMm;

    private void Run()
    {
        if (_border.Edges.Length > 0)
        {
            Within(BorderTree.Root);
        }
    }

    private void Within(int node)
    {
        if (_tree.IsLeaf(node))
        {
            return;
        }

        Within(2 * node);
        Within((2 * node) + 1);
        Across(2 * node, (2 * node) + 1);
    }

    private void Across(int one, int other)
    {
        _ct.ThrowIfCancellationRequested();
        if (_tree.Gap(one, other) > ReachMm || !_tree.CanFace(one, other, 2 * FacingPoint.SquareRad))
        {
            return;
        }

        if (_tree.IsLeaf(one) && _tree.IsLeaf(other))
        {
            FacingPairs.Between(_border, _tree.EdgeAt(one), _tree.EdgeAt(other), Take);
            return;
        }

        bool openOne = !_tree.IsLeaf(one) && (_tree.IsLeaf(other) || _tree.SizeMm(one) >= _tree.SizeMm(other));
        (int nearOne, int nearOther) = openOne ? (2 * one, other) : (one, 2 * other);
        (int farOne, int farOther) = openOne ? (nearOne + 1, other) : (one, nearOther + 1);
        if (_tree.Gap(farOne, farOther) < _tree.Gap(nearOne, nearOther))
        {
            (nearOne, nearOther, farOne, farOther) = (farOne, farOther, nearOne, nearOther);
        }

        Across(nearOne, nearOther);
        Across(farOne, farOther);
    }

    private void Take(Width width)
    {
        bool isBelow = width.Mm < _limitMm - CutTolerances.TouchingMm && _below.Count < MostKept;
        bool isLeast = _wantsLeast && width.Mm < (_least?.Mm ?? double.PositiveInfinity);
        if ((!isBelow && !isLeast) || !_tree.IsFree(width.From, width.To))
        {
            return;
        }

        _least = isLeast ? width : _least;
        if (isBelow)
        {
            _below.Add(width);
        }
    }
}
