using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Writing;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Repair;

/// <summary>Finds what in a drawing can be mended, and how.</summary>
internal sealed class MendingPlan
{
    private readonly List<Mend> _mends = [];
    private readonly List<string> _left = [];
    private readonly ShapeLookup _shapes;

    public MendingPlan(DxfReadResult read, DxfDrawing drawing, InspectionSettings settings, CancellationToken ct)
    {
        _shapes = new ShapeLookup(drawing);
        EntityOrder order = new(drawing);
        ImmutableArray<string> layers = CutLayers.Of(drawing, settings);
        DrawnContours drawn = DrawnContours.Of(drawing, layers, settings.JoinToleranceMm, order, ct);
        DxfIssue[] issues =
        [
            .. read.Issues.Where(issue =>
                issue.Code == DxfIssueCodes.ZeroLength
                && layers.Contains(issue.Layer ?? "", StringComparer.OrdinalIgnoreCase)
            ),
            .. drawn.Issues.Where(issue => issue.Kind == DxfIssueKind.Repair),
        ];
        foreach (DxfIssue issue in issues)
        {
            LeaveOut(issue);
        }

        HashSet<int> copies = LeaveOutCopies(drawn.Closed, settings);
        MendedIssues mended = new(issues, _shapes);
        IEnumerable<ChainToMend> chains = drawn
            .Closed.Where((_, i) => !copies.Contains(i))
            .Select(ChainToMend.Of)
            .Concat(drawn.Open.Select(entry => ChainToMend.Of(entry.Layer, entry.Path)));
        foreach (ChainToMend chain in chains)
        {
            ct.ThrowIfCancellationRequested();
            ChainMending mending = new(chain, _shapes, mended, settings);
            _mends.AddRange(mending.Mends());
            _left.AddRange(mending.Left);
        }

        _left.AddRange(drawn.Open.Select(LeftOpen));
        _left.AddRange(
            drawn.Issues.Where(issue => issue.Code == DxfIssueCodes.BranchPoint).Select(issue => issue.Sentence)
        );
    }

    /// <summary>What is to be mended, in the order in which it was found.</summary>
    public IReadOnlyList<Mend> Mends => _mends;

    /// <summary>What cannot be mended, each in one sentence.</summary>
    public IReadOnlyList<string> Left => _left;

    /// <summary>Leaves out an entity that reading or joining did without: a copy or a speck.</summary>
    private void LeaveOut(DxfIssue issue)
    {
        DxfShape? gone = _shapes.At(issue.Line);
        switch (issue.Code)
        {
            case DxfIssueCodes.ZeroLength when issue.Entities.IsEmpty && gone is null && issue.EntityType is { } type:
                // Nothing was left of it, so no chain holds it.
                gone = new DxfShape(issue.Handle ?? "", issue.Layer!, type, issue.Line!.Value, new OpenChain([]));
                break;
            case DxfIssueCodes.ZeroLength when issue.Entities.IsEmpty && gone is null:
            case DxfIssueCodes.Duplicate:
            case DxfIssueCodes.ZeroLength when !issue.Entities.IsEmpty:
                break;
            default:
                return;
        }

        if (gone is null || gone.IsInBlock)
        {
            _left.Add($"{issue.Sentence} In the file it stands in a block and was left: explode the block first.");
            return;
        }

        _mends.Add(new Mend([DxfReplacement.LeavingOut(gone)], [issue.Sentence]));
    }

    private HashSet<int> LeaveOutCopies(ImmutableArray<CutContour> contours, InspectionSettings settings)
    {
        HashSet<int> copies = [];
        foreach ((int original, int copy) in CopiesAcrossLayers.In(contours, settings.JoinToleranceMm))
        {
            copies.Add(copy);
            CutContour gone = contours[copy];
            DxfShape[] shapes =
            [
                .. gone
                    .Outline.Edges.Zip(gone.EdgeHandles)
                    .DistinctBy(pair => pair.Second)
                    .Select(pair => _shapes.Named(pair.Second, pair.First)),
            ];
            string copied = $"{Sentence.Begin(gone.Label)}, a second copy of {contours[original].Label},";
            if (Array.Exists(shapes, shape => shape.IsInBlock))
            {
                _left.Add($"{copied} stands in a block and was left: explode the block first.");
            }
            else
            {
                _mends.Add(new Mend([DxfReplacement.LeavingOut([.. shapes])], [$"{copied} was left out."]));
            }
        }

        return copies;
    }

    private static string LeftOpen((string Layer, OpenPath Path) open) =>
        $"The chain of {Said.Entities(open.Path.Handles)} on layer {open.Layer} does not close, from {Said.At(open.Path.Edges[0].Start)} to "
        + $"{Said.At(open.Path.Edges[^1].End)}: what is missing has to be drawn.";
}
