using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Writing;
using Flushback.Geometry;
using Flushback.Inspection.Checks;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Repair;

/// <summary>Mends one chain: entity by entity where that is enough, as one polyline where a repair reaches over several.</summary>
internal sealed class ChainMending
{
    private readonly ChainToMend _chain;
    private readonly ShapeLookup _lookup;
    private readonly MendedIssues _allIssues;
    private readonly ImmutableArray<DxfIssue> _issues;
    private readonly EntitySlots _slots;
    private readonly DxfShape[] _shapes;
    private readonly bool[] _isChanged;
    private readonly List<(int Edge, string Sentence)> _sentences = [];
    private readonly List<Piece> _pieces = [];
    private readonly Circle? _circle;
    private readonly ILookup<int, List<Piece>> _runs;
    private readonly ILookup<int, string> _sentencesByGroup;

    /// <param name="chain">The chain.</param>
    /// <param name="shapes">The shapes of the drawing.</param>
    /// <param name="issues">What was put right while reading and joining.</param>
    /// <param name="settings">The settings of the inspection.</param>
    public ChainMending(ChainToMend chain, ShapeLookup shapes, MendedIssues issues, InspectionSettings settings)
    {
        _chain = chain;
        _lookup = shapes;
        _allIssues = issues;
        _issues = [.. chain.EdgeHandles.Distinct().SelectMany(issues.About).Distinct()];
        _slots = new EntitySlots(chain.EdgeHandles);
        _shapes =
        [
            .. Enumerable
                .Range(0, _slots.Count)
                .Select(slot => shapes.Named(_slots.Name(slot), chain.Edges[_slots.First(slot)])),
        ];
        _isChanged = new bool[_slots.Count];
        _circle = chain.Circle;
        if (_circle is null)
        {
            MendedPieces mended = new(chain, settings.MicroSegmentMm, NameAt);
            _pieces = mended.Pieces;
            _circle = mended.Circle;
            _sentences.AddRange(mended.Sentences);
        }

        MarkEntities();
        MarkCircle();
        MarkPieces();
        JoinGaps();
        _runs = ChangedRuns();
        _sentencesByGroup = _sentences.ToLookup(
            entry => _slots.GroupOf(_slots.Of(entry.Edge)),
            entry => entry.Sentence
        );
    }

    /// <summary>Sentences about what stands in a block and was left.</summary>
    public List<string> Left { get; } = [];

    /// <summary>What is to be mended.</summary>
    public IEnumerable<Mend> Mends()
    {
        IEnumerable<int> changed = Enumerable.Range(0, _slots.Count).Where(slot => _isChanged[slot]);
        foreach (IGrouping<int, int> slots in changed.GroupBy(_slots.GroupOf))
        {
            ImmutableArray<DxfIssue> overlaps = _allIssues.OverlapsInto(slots.Select(_slots.Name));
            DxfShape?[] covered = [.. overlaps.Select(issue => _lookup.At(issue.Line))];
            DxfShape?[] concerned = [.. slots.Select(slot => _shapes[slot]), .. covered];
            int inBlock = Array.FindIndex(concerned, shape => shape is null or { IsInBlock: true });
            if (inBlock >= 0)
            {
                Left.Add(
                    $"{concerned[inBlock]?.Label ?? overlaps[0].Sentence} on layer {_chain.Layer} stands in a block, which may be placed "
                        + "elsewhere too, so it was left as it is: explode the block first."
                );
                continue;
            }

            yield return new Mend(
                [.. ReplacementsOf(slots), .. covered.Select(shape => DxfReplacement.LeavingOut(shape!))],
                [.. SentencesOf(slots, overlaps)]
            );
        }
    }

    private string NameAt(int edge) => $"{_shapes[_slots.Of(edge)].Label} on layer {_chain.Layer}";

    /// <summary>Marks entities that change whether or not an edge of theirs moves: curves, edges of no length, what lay on another.</summary>
    private void MarkEntities()
    {
        HashSet<string> mended =
        [
            .. _issues
                .Where(issue => issue.Code is DxfIssueCodes.ZeroLength or DxfIssueCodes.Overlap)
                .SelectMany(issue => _allIssues.NamesIn(issue)),
        ];
        for (int slot = 0; slot < _shapes.Length; slot++)
        {
            bool isCurve = FittedCurves.IsOne(_shapes[slot]);
            _isChanged[slot] = isCurve || mended.Contains(_slots.Name(slot));
            if (isCurve)
            {
                string arcs = Said.Count(_slots.EdgesIn(slot), "arc or line", "arcs and lines");
                _sentences.Add((_slots.First(slot), $"{NameAt(_slots.First(slot))} became {arcs}."));
            }
        }
    }

    /// <summary>Of a circle drawn in parts, all change or none: it is what it was unless something was put right in it.</summary>
    private void MarkCircle()
    {
        if (_chain.Circle is null)
        {
            return;
        }

        bool isChanged = !_issues.IsEmpty || Array.Exists(_isChanged, changed => changed);
        Array.Fill(_isChanged, isChanged);
        for (int slot = 1; slot < _slots.Count; slot++)
        {
            _slots.Join(0, slot);
        }
    }

    private void MarkPieces()
    {
        foreach (Piece piece in _pieces.Where(piece => !IsUnchanged(piece)))
        {
            for (int edge = piece.First; edge < piece.First + piece.Count; edge++)
            {
                _isChanged[_slots.Of(edge)] = true;
                _slots.Join(_slots.Of(piece.First), _slots.Of(edge));
            }
        }
    }

    /// <summary>Has both sides of a gap mended, or neither.</summary>
    private void JoinGaps()
    {
        foreach (DxfIssue gap in _issues.Where(issue => issue.Code == DxfIssueCodes.GapBridged))
        {
            int[] sides = [.. gap.Entities.Select(_slots.Named).Where(slot => slot >= 0 && _isChanged[slot])];
            for (int i = 1; i < sides.Length; i++)
            {
                _slots.Join(sides[0], sides[i]);
            }
        }
    }

    private bool IsUnchanged(Piece piece)
    {
        int edge = piece.First % _chain.Edges.Length;
        int slot = _slots.Of(edge);
        return piece.Count == 1
            && piece.Edges is [var kept]
            && DrawnEdges.IsUnchanged(
                DrawnEdges.Of(_shapes[slot]),
                kept,
                edge - _slots.First(slot),
                _slots.EdgesIn(slot)
            );
    }

    private IEnumerable<DxfReplacement> ReplacementsOf(IGrouping<int, int> slots) =>
        _circle is { } circle
            ? [Replacement(slots, new OverlayCircle(circle))]
            : _runs[slots.Key].Select(ReplacementOf);

    private DxfReplacement ReplacementOf(List<Piece> run)
    {
        ImmutableArray<Edge> edges = [.. run.SelectMany(piece => piece.Edges)];
        IEnumerable<int> slots = run.SelectMany(piece => Enumerable.Range(piece.First, piece.Count)).Select(_slots.Of);
        bool isWhole = _chain.IsClosed && run.Sum(piece => piece.Count) == _chain.Edges.Length;
        return Replacement(
            slots.Distinct(),
            edges is [var single] && !isWhole ? new OverlayEdge(single) : new OverlayPath(edges, isWhole)
        );
    }

    private DxfReplacement Replacement(IEnumerable<int> slots, OverlayEntity drawn) =>
        new([.. slots.Select(slot => _shapes[slot])], _chain.Layer, [drawn]);

    /// <summary>The pieces that change, cut where a piece and an entity begin together, by what is mended together.</summary>
    private ILookup<int, List<Piece>> ChangedRuns()
    {
        int start = Math.Max(0, _pieces.FindIndex(piece => _slots.IsFirst(piece.First)));
        List<(int Group, List<Piece> Run)> runs = [];
        int last = -1;
        for (int i = 0; i < _pieces.Count; i++)
        {
            Piece piece = _pieces[(start + i) % _pieces.Count];
            int slot = _slots.Of(piece.First);
            int group = _isChanged[slot] ? _slots.GroupOf(slot) : -1;
            if (group >= 0 && (group != last || _slots.IsFirst(piece.First)))
            {
                runs.Add((group, []));
            }

            if (group >= 0)
            {
                runs[^1].Run.Add(piece);
            }

            last = group;
        }

        return runs.ToLookup(run => run.Group, run => run.Run);
    }

    private IEnumerable<string> SentencesOf(IGrouping<int, int> slots, IEnumerable<DxfIssue> overlaps) =>
        slots
            .SelectMany(slot => _allIssues.About(_slots.Name(slot)))
            .Distinct()
            .Where(issue => issue.Code != DxfIssueCodes.Overlap)
            .Concat(overlaps)
            .Select(issue => issue.Sentence)
            .Concat(_sentencesByGroup[slots.Key]);
}
