using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Refitting;
using Flushback.Dxf.Writing;
using Flushback.Geometry;
using Flushback.Inspection.Checks;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Repair;

/// <summary>Mends one chain: entity by entity where that is enough, as one polyline where a repair reaches over several.</summary>
internal sealed class ChainMending
{
    private readonly ChainToMend _chain;
    private readonly ImmutableArray<DxfIssue> _issues;
    private readonly MendedIssues _allIssues;
    private readonly ShapeLookup _lookup;
    private readonly DxfShape[] _shapes;
    private readonly int[] _slotOf;
    private readonly int[] _firstOf;
    private readonly int[] _group;
    private readonly bool[] _isChanged;
    private readonly List<(int Edge, string Sentence)> _sentences = [];
    private readonly List<Piece> _pieces;

    /// <param name="chain">The chain.</param>
    /// <param name="shapes">The shapes of the drawing.</param>
    /// <param name="issues">What was put right while reading and joining.</param>
    /// <param name="settings">The settings of the inspection.</param>
    public ChainMending(ChainToMend chain, ShapeLookup shapes, MendedIssues issues, InspectionSettings settings)
    {
        _chain = chain;
        _allIssues = issues;
        _lookup = shapes;
        _slotOf = SlotsOf(chain.EdgeHandles);
        int slots = _slotOf[^1] + 1;
        _firstOf = [.. Enumerable.Range(0, slots).Select(slot => Array.IndexOf(_slotOf, slot))];
        _shapes = [.. _firstOf.Select(edge => shapes.Named(chain.EdgeHandles[edge], chain.Edges[edge]))];
        _group = [.. Enumerable.Range(0, slots)];
        _isChanged = new bool[slots];
        _issues = [.. chain.EdgeHandles.Distinct().SelectMany(issues.About).Distinct()];
        _pieces = chain.Circle is null ? MendedPieces(settings) : [];
        MarkChanged();
    }

    /// <summary>Sentences about what stands in a block and was left.</summary>
    public List<string> Left { get; } = [];

    /// <summary>What is to be mended.</summary>
    public IEnumerable<Mend> Mends()
    {
        foreach (
            IGrouping<int, int> slots in Enumerable
                .Range(0, _group.Length)
                .Where(slot => _isChanged[slot])
                .GroupBy(Root)
        )
        {
            ImmutableArray<DxfIssue> overlaps = _allIssues.OverlapsInto(slots.Select(NameOf));
            DxfShape?[] covered = [.. overlaps.Select(issue => _lookup.At(issue.Line))];
            DxfShape? inBlock = slots
                .Select(slot => _shapes[slot])
                .Concat(covered)
                .FirstOrDefault(shape => shape is null or { IsInBlock: true });
            if (inBlock is not null || Array.Exists(covered, shape => shape is null))
            {
                string which = inBlock?.Label ?? overlaps[0].Entities[1];
                Left.Add(
                    $"{which} on layer {_chain.Layer} stands in a block, which may be placed elsewhere too, so it was left as it is: explode the "
                        + "block first."
                );
                continue;
            }

            yield return new Mend(
                [.. ReplacementsOf([.. slots]), .. covered.Select(shape => DxfReplacement.LeavingOut(shape!))],
                [.. SentencesOf(slots, overlaps)]
            );
        }
    }

    private static int[] SlotsOf(ImmutableArray<string> names)
    {
        int[] slots = new int[names.Length];
        for (int i = 1; i < names.Length; i++)
        {
            slots[i] = slots[i - 1] + (names[i] == names[i - 1] ? 0 : 1);
        }

        return slots;
    }

    private List<Piece> MendedPieces(InspectionSettings settings)
    {
        RefittedShape refitted = _chain.IsClosed
            ? ArcRefitting.Of(
                Outline.FromVertices([.. _chain.Edges.Select(edge => new Vertex(edge.Start, edge.Bulge))]),
                RefitTolerances.Default
            )
            : ArcRefitting.Of(_chain.Edges, RefitTolerances.Default);
        ImmutableArray<Refit> refits =
        [
            .. refitted.Refits.Where(refit => PolygonsForArcs.AreLines(refit, _chain.Edges)),
        ];
        foreach (Refit refit in refits)
        {
            string what =
                refit.From == refit.To
                    ? $"a circle of {Said.Length(refit.Circle.DiameterMm)} at {Said.At(refit.Circle.Centre)}"
                    : $"an arc of radius {Said.Length(refit.Circle.RadiusMm)} from {Said.At(refit.From)} to {Said.At(refit.To)}";
            _sentences.Add(
                (
                    refit.FirstEdge,
                    $"{Said.Count(refit.EdgeCount, "edge", "edges")} of {NameAt(refit.FirstEdge)} became {what}, within {Said.Length(refit.DeviationMm)}."
                )
            );
        }

        if (refits is [var whole] && whole.From == whole.To)
        {
            return [new Piece(Contours.CutContour.OutlineOf(whole.Circle).Edges, 0, _chain.Edges.Length)];
        }

        List<Piece> pieces = ArcsFromLines.Pieces(_chain.Edges, refits);
        int[] shorts = [.. ShortAmong(pieces, settings.MicroSegmentMm)];
        ShortEdgeJoining.Join(pieces, _chain.IsClosed, settings.MicroSegmentMm);
        int[] left = [.. ShortAmong(pieces, settings.MicroSegmentMm)];
        foreach (IGrouping<int, int> ofSlot in shorts.Except(left).GroupBy(edge => _slotOf[edge]))
        {
            _sentences.Add(
                (
                    ofSlot.First(),
                    $"{Said.Count(ofSlot.Count(), "segment", "segments")} of {NameAt(ofSlot.First())} shorter than "
                        + $"{Said.Length(settings.MicroSegmentMm)} went into what stands next to them."
                )
            );
        }

        return pieces;
    }

    private IEnumerable<int> ShortAmong(List<Piece> pieces, double shortMm) =>
        pieces
            .Where(piece => piece.Count == 1 && piece.Edges is [var edge] && edge.LengthMm < shortMm)
            .Select(piece => piece.First % _chain.Edges.Length);

    private string NameAt(int edge)
    {
        DxfShape shape = _shapes[_slotOf[edge % _chain.Edges.Length]];
        return $"{shape.Label} on layer {_chain.Layer}";
    }

    private void MarkChanged()
    {
        HashSet<string> mended =
        [
            .. _issues.Where(issue => IsWithinEntity(issue)).SelectMany(issue => _allIssues.NamesIn(issue)),
        ];
        for (int slot = 0; slot < _shapes.Length; slot++)
        {
            bool isCurve = FittedCurves.IsOne(_shapes[slot]);
            _isChanged[slot] = isCurve || mended.Contains(_chain.EdgeHandles[_firstOf[slot]]);
            if (isCurve)
            {
                int count = _slotOf.Count(of => of == slot);
                _sentences.Add(
                    (
                        _firstOf[slot],
                        $"{NameAt(_firstOf[slot])} became {Said.Count(count, "arc or line", "arcs and lines")}."
                    )
                );
            }
        }

        // A circle of two arcs is what it was unless something was put right in it.
        if (_chain.Circle is not null)
        {
            bool isChanged = Array.Exists(_isChanged, changed => changed) || !_issues.IsEmpty;
            Array.Fill(_isChanged, isChanged);
            Array.Fill(_group, 0);
        }

        foreach (Piece piece in _pieces)
        {
            if (!IsUnchanged(piece))
            {
                for (int i = 0; i < piece.Count; i++)
                {
                    int slot = _slotOf[(piece.First + i) % _chain.Edges.Length];
                    _isChanged[slot] = true;
                    Unite(_slotOf[piece.First % _chain.Edges.Length], slot);
                }
            }
        }

        // Both sides of a gap are mended, or neither.
        foreach (DxfIssue gap in _issues.Where(issue => issue.Code == DxfIssueCodes.GapBridged))
        {
            int[] sides = [.. gap.Entities.Select(SlotNamed).Where(slot => slot >= 0 && _isChanged[slot])];
            for (int i = 1; i < sides.Length; i++)
            {
                Unite(sides[0], sides[i]);
            }
        }
    }

    /// <summary>Whether an issue changed an entity without moving any of its edges: an edge of no length, a part that was covered twice.</summary>
    private static bool IsWithinEntity(DxfIssue issue) =>
        issue.Code is DxfIssueCodes.ZeroLength or DxfIssueCodes.Overlap;

    private int SlotNamed(string name) => Array.FindIndex(_firstOf, edge => _chain.EdgeHandles[edge] == name);

    private bool IsUnchanged(Piece piece)
    {
        int edge = piece.First % _chain.Edges.Length;
        int slot = _slotOf[edge];
        int count = (slot + 1 < _firstOf.Length ? _firstOf[slot + 1] : _chain.Edges.Length) - _firstOf[slot];
        return piece.Count == 1
            && piece.Edges is [var kept]
            && DrawnEdges.IsUnchanged(DrawnEdges.Of(_shapes[slot]), kept, edge - _firstOf[slot], count);
    }

    private IEnumerable<DxfReplacement> ReplacementsOf(int[] slots)
    {
        if (_chain.Circle is { } circle)
        {
            return
            [
                new DxfReplacement([.. slots.Select(slot => _shapes[slot])], _chain.Layer, [new OverlayCircle(circle)]),
            ];
        }

        if (
            _pieces is [{ Edges: var round, Count: var all }]
            && _chain.IsClosed
            && all == _chain.Edges.Length
            && round.Length == 2
        )
        {
            Circle whole = new(round[0].Centre, round[0].RadiusMm);
            return
            [
                new DxfReplacement([.. slots.Select(slot => _shapes[slot])], _chain.Layer, [new OverlayCircle(whole)]),
            ];
        }

        return RunsOf(slots).Select(run => ReplacementOf(run));
    }

    private DxfReplacement ReplacementOf(List<Piece> run)
    {
        ImmutableArray<Edge> edges = [.. run.SelectMany(piece => piece.Edges)];
        int[] slots =
        [
            .. run.SelectMany(piece => Enumerable.Range(piece.First, piece.Count))
                .Select(edge => _slotOf[edge % _chain.Edges.Length])
                .Distinct(),
        ];
        bool isWhole = _chain.IsClosed && run.Sum(piece => piece.Count) == _chain.Edges.Length;
        OverlayEntity drawn =
            edges is [var single] && !isWhole ? new OverlayEdge(single) : new OverlayPath(edges, isWhole);
        return new DxfReplacement([.. slots.Select(slot => _shapes[slot])], _chain.Layer, [drawn]);
    }

    /// <summary>The pieces of some entities, cut where a piece and an entity begin together.</summary>
    private List<List<Piece>> RunsOf(int[] slots)
    {
        HashSet<int> wanted = [.. slots];
        int n = _chain.Edges.Length;
        int start = Math.Max(0, _pieces.FindIndex(piece => IsEntityStart(piece.First % n)));
        List<List<Piece>> runs = [];
        bool continues = false;
        for (int i = 0; i < _pieces.Count; i++)
        {
            Piece piece = _pieces[(start + i) % _pieces.Count];
            if (!wanted.Contains(_slotOf[piece.First % n]))
            {
                continues = false;
                continue;
            }

            if (!continues || IsEntityStart(piece.First % n))
            {
                runs.Add([]);
            }

            runs[^1].Add(piece);
            continues = true;
        }

        return runs;
    }

    // An entity that goes on from the end of a closed chain to its start does not begin there.
    private bool IsEntityStart(int edge) => _firstOf[_slotOf[edge]] == edge;

    private string NameOf(int slot) => _chain.EdgeHandles[_firstOf[slot]];

    private IEnumerable<string> SentencesOf(IEnumerable<int> slots, IEnumerable<DxfIssue> overlaps)
    {
        HashSet<int> own = [.. slots];
        HashSet<string> names = [.. own.Select(NameOf)];
        return _issues
            .Where(issue => issue.Code != DxfIssueCodes.Overlap && _allIssues.NamesIn(issue).Any(names.Contains))
            .Concat(overlaps)
            .Select(issue => issue.Sentence)
            .Concat(
                _sentences
                    .Where(entry => own.Contains(_slotOf[entry.Edge % _chain.Edges.Length]))
                    .Select(entry => entry.Sentence)
            );
    }

    private int Root(int slot)
    {
        while (_group[slot] != slot)
        {
            slot = _group[slot];
        }

        return slot;
    }

    private void Unite(int one, int other)
    {
        (int first, int second) = (Root(one), Root(other));
        _group[Math.Max(first, second)] = Math.Min(first, second);
    }
}
