using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Checking;
using Flushback.Geometry.Crossings;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Contours that cross, touch or run along themselves or each other.</summary>
internal sealed class Crossings
{
    /// <summary>A drawing with more contours in a tangle has one cause, not a thousand.</summary>
    private const int MostPairs = 1000;

    private readonly ImmutableArray<CutContour> _contours;
    private readonly CancellationToken _ct;
    private readonly HashSet<int> _faulty = [];
    private readonly List<InspectionFinding> _findings = [];

    public Crossings(ImmutableArray<CutContour> contours, CancellationToken ct)
    {
        _contours = contours;
        _ct = ct;
        for (int i = 0; i < contours.Length; i++)
        {
            MeetItself(i);
        }

        MeetEachOther();
    }

    public IEnumerable<InspectionFinding> Findings => _findings;

    /// <summary>Contours at fault, by index: what is metal and what is not cannot be told there.</summary>
    public IReadOnlySet<int> Faulty => _faulty;

    private void MeetItself(int i)
    {
        CutContour contour = _contours[i];
        if (contour.Circle is not null)
        {
            return;
        }

        GeometryTolerances tolerances = GeometryTolerances.Default with { TouchingMm = CutTolerances.TouchingMm };
        foreach (OutlineFlaw flaw in OutlineCheck.FlawsOf(contour.Outline.Vertices.AsSpan(), tolerances, _ct))
        {
            _faulty.Add(i);
            IEnumerable<int> edges = flaw.OtherVertexIndex is { } second
                ? [flaw.VertexIndex, second]
                : [flaw.VertexIndex];
            string how = flaw.Kind switch
            {
                OutlineFlawKind.SelfCrossing => "crosses itself",
                OutlineFlawKind.SelfTouching => "touches itself",
                OutlineFlawKind.SelfOverlapping => "runs along itself",
                OutlineFlawKind.ZeroArea => "encloses no area",
                _ => "cannot be computed with",
            };
            _findings.Add(
                new InspectionFinding(
                    InspectionCodes.SelfCrossing,
                    Severity.Fault,
                    $"{Sentence.Begin(contour.Label)} {how} at {Said.At(flaw.At)}.",
                    "Trim or move the edges so that the contour goes round once.",
                    [.. edges.Select(edge => contour.EdgeHandles[edge]).Distinct()],
                    contour.Layer,
                    flaw.At
                )
            );
        }
    }

    private void MeetEachOther()
    {
        int[] owners = [.. _contours.SelectMany((contour, i) => Enumerable.Repeat(i, contour.Outline.Edges.Length))];
        ImmutableArray<string> handles = [.. _contours.SelectMany(contour => contour.EdgeHandles)];
        ImmutableArray<Edge> edges = [.. _contours.SelectMany(contour => contour.Outline.Edges)];
        BoxIndex index = new([.. edges.Select(edge => edge.Bounds.Grown(CutTolerances.TouchingMm))]);
        HashSet<(int, int)> known = [];
        foreach ((int lower, int higher) in index.Pairs())
        {
            _ct.ThrowIfCancellationRequested();
            (int One, int Other) pair = (owners[lower], owners[higher]);
            if (pair.One == pair.Other || known.Contains(pair) || known.Count >= MostPairs)
            {
                continue;
            }

            Meetings meetings = Crossing.Between(edges[lower], edges[higher], CutTolerances.TouchingMm);
            if (meetings.Count > 0)
            {
                known.Add(pair);
                Tell(pair.One, pair.Other, meetings.First, [handles[lower], handles[higher]]);
            }
        }
    }

    private void Tell(int one, int other, Meeting meeting, ImmutableArray<string> handles)
    {
        _faulty.Add(one);
        _faulty.Add(other);
        CutContour first = _contours[one];
        CutContour second = _contours[other];
        string how = meeting.Kind switch
        {
            MeetingKind.Crossing => "crosses",
            MeetingKind.Overlap => "runs along",
            _ => "meets",
        };
        _findings.Add(
            new InspectionFinding(
                InspectionCodes.ContoursCross,
                Severity.Fault,
                $"{Sentence.Begin(first.Label)} {how} {second.Label} at {Said.At(meeting.At)}.",
                "Move one of the two: contours that are cut have metal or air between them.",
                handles,
                first.Layer,
                meeting.At
            )
        );
    }
}
