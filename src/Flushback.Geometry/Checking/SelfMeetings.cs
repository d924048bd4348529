using System.Collections.Immutable;
using Flushback.Geometry.Chains;
using Flushback.Geometry.Crossings;
using Flushback.Geometry.Distances;

namespace Flushback.Geometry.Checking;

/// <summary>Where an outline meets itself away from its vertices: pairs of edges, far ones left out by their boxes.</summary>
/// <remarks>
/// The boxes stand along the grain of the drawing: those of a comb of long slanted teeth would all overlap if they stood
/// upright. Edges that lie dense and long in many directions, as in a starburst, are still compared pair by pair.
/// </remarks>
internal sealed class SelfMeetings(Outline outline, double touchingMm, CancellationToken cancellation)
{
    private readonly int _edgeCount = outline.Edges.Length;
    private readonly List<OutlineFlaw> _flaws = [];

    /// <summary>How many pairs of edges have been compared: what the boxes could not rule out.</summary>
    public int Comparisons { get; private set; }

    public ImmutableArray<OutlineFlaw> Run()
    {
        new BoxPairs(AlongGrain(outline).Boxes, touchingMm, Compare, cancellation).Run();
        _flaws.Sort(
            (a, b) => (a.VertexIndex, a.OtherVertexIndex ?? 0).CompareTo((b.VertexIndex, b.OtherVertexIndex ?? 0))
        );
        return [.. _flaws];
    }

    private bool IsFull => _flaws.Count >= OutlineCheck.MostFlaws;

    /// <summary>The outline turned so that its grain, the direction most of its length runs in, lies along x.</summary>
    private static Outline AlongGrain(Outline outline)
    {
        // With angles doubled, edges of opposite directions add up instead of cancelling.
        Vector doubled = default;
        foreach (Edge edge in outline.Edges)
        {
            Vector chord = edge.Chord;
            doubled += chord.Rotated(chord.Direction);
        }

        return outline.Transformed(new RigidMotion(doubled.Direction * -0.5, default));
    }

    /// <summary>Compares two edges; false when no more flaws are told.</summary>
    private bool Compare(int lower, int higher)
    {
        Comparisons++;
        ref readonly Edge first = ref outline.Edges.ItemRef(lower);
        ref readonly Edge second = ref outline.Edges.ItemRef(higher);
        if (IsBeside(first, second) || IsBeside(second, first))
        {
            return true;
        }

        Meetings meetings = Crossing.Between(first, second, touchingMm);
        for (int i = 0; i < meetings.Count; i++)
        {
            Meeting meeting = meetings[i];
            bool isJoint =
                (higher == lower + 1 && IsAtJoint(first, second, meeting, 1))
                || (lower == 0 && higher == _edgeCount - 1 && IsAtJoint(first, second, meeting, 0));
            if (!isJoint)
            {
                Add(new OutlineFlaw(KindOf(meeting.Kind), lower, meeting.At, higher));
            }
        }

        return !IsFull;
    }

    /// <summary>Whether one edge lies clear to one side of the other's chord; a quick no to most pairs.</summary>
    private bool IsBeside(in Edge edge, in Edge other)
    {
        // Every point of an arc lies within its sagitta of its chord.
        Vector chord = edge.Chord;
        double margin = (touchingMm + edge.SagittaMm + other.SagittaMm) * chord.Length;
        double start = chord.Cross(other.Start - edge.Start);
        double end = chord.Cross(other.End - edge.Start);
        return Math.Min(start, end) > margin || Math.Max(start, end) < -margin;
    }

    /// <summary>
    /// Whether a meeting of two neighbours is only their common vertex: the edges do not part between the two. Edges that
    /// pass into each other smoothly may by rounding cross again close by.
    /// </summary>
    private bool IsAtJoint(in Edge first, in Edge second, in Meeting meeting, double jointFraction)
    {
        if (meeting.Kind == MeetingKind.Overlap)
        {
            return false;
        }

        Point between = first.PointAt((meeting.OnFirst.Middle + jointFraction) / 2);
        return Distance.Between(between, second).DistanceMm <= touchingMm;
    }

    private void Add(OutlineFlaw flaw)
    {
        // Where a vertex touches an edge, both its edges do: once is enough.
        bool isKnown = _flaws.Exists(known => known.Kind == flaw.Kind && known.At.IsWithin(2 * touchingMm, flaw.At));
        if (!isKnown && !IsFull)
        {
            _flaws.Add(flaw);
        }
    }

    private static OutlineFlawKind KindOf(MeetingKind kind) =>
        kind switch
        {
            MeetingKind.Crossing => OutlineFlawKind.SelfCrossing,
            MeetingKind.Overlap => OutlineFlawKind.SelfOverlapping,
            _ => OutlineFlawKind.SelfTouching,
        };
}
