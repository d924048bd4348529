using Flushback.Geometry.Distances;

namespace Flushback.Geometry.Crossings;

/// <summary>Collects the meetings of two edges that do not run along one another.</summary>
internal ref struct MeetingSearch(Edge a, Edge b, double toleranceMm)
{
    private readonly Edge _a = a;
    private readonly Edge _b = b;
    private readonly double _toleranceMm = toleranceMm;
    private Meetings _found;

    public Meetings Run()
    {
        if (!TryTangency())
        {
            int count = Carriers.CommonPoints(_a, _b, out Point first, out Point second);
            if (count > 0)
            {
                AddCarrierPoint(first, MeetingKind.Crossing);
            }

            if (count > 1)
            {
                AddCarrierPoint(second, MeetingKind.Crossing);
            }
        }

        AddEnd(0, _a.Start, _b, endIsOfFirst: true);
        AddEnd(1, _a.End, _b, endIsOfFirst: true);
        AddEnd(0, _b.Start, _a, endIsOfFirst: false);
        AddEnd(1, _b.End, _a, endIsOfFirst: false);
        return _found;
    }

    /// <summary>True when the carriers touch or pass by no more than the tolerance; then no common points are looked for.</summary>
    private bool TryTangency()
    {
        if (!_a.IsArc && !_b.IsArc)
        {
            return false;
        }

        (Edge arc, Edge other) = _a.IsArc && (!_b.IsArc || _a.RadiusMm <= _b.RadiusMm) ? (_a, _b) : (_b, _a);
        Vector towards = NearestDirection(arc.Centre, other);
        Point onArc = arc.Centre + (towards * arc.RadiusMm);

        // Once more without the centre, which may lie far off.
        double leftMm = arc.LeftOfCarrierMm(onArc);
        onArc += towards * (arc.Bulge > 0 ? leftMm : -leftMm);
        if (!(Math.Abs(other.LeftOfCarrierMm(onArc)) <= _toleranceMm))
        {
            return false;
        }

        AddCarrierPoint(onArc, MeetingKind.Tangency);
        return true;
    }

    /// <summary>Unit direction from a circle's centre in which it comes nearest to touching another carrier.</summary>
    private static Vector NearestDirection(Point centre, in Edge other)
    {
        if (!other.IsArc)
        {
            Vector left = other.Chord.Left.Normalized;
            return other.LeftOfCarrierMm(centre) > 0 ? -left : left;
        }

        // A circle whose centre lies outside the other touches it from outside, else from inside.
        Vector between = other.Centre - centre;
        return (between.Length > other.RadiusMm ? between : -between).Normalized;
    }

    private void AddCarrierPoint(Point point, MeetingKind kind)
    {
        if (
            EdgePosition.TryFractionAt(_a, point, _toleranceMm, out double onA)
            && EdgePosition.TryFractionAt(_b, point, _toleranceMm, out double onB)
        )
        {
            Add(onA, onB, kind, point);
        }
    }

    private void AddEnd(double endFraction, Point end, in Edge other, bool endIsOfFirst)
    {
        Nearest nearest = Distance.Between(end, other);
        if (nearest.DistanceMm <= _toleranceMm)
        {
            double onOther = Math.Clamp(EdgePosition.FractionAt(other, nearest.OnSecond), 0, 1);
            (double onA, double onB) = endIsOfFirst ? (endFraction, onOther) : (onOther, endFraction);
            Add(onA, onB, MeetingKind.Touch, end);
        }
    }

    private void Add(double onA, double onB, MeetingKind kind, Point at)
    {
        for (int i = 0; i < _found.Count; i++)
        {
            if (StayTogether(_found[i].OnFirst.From, onA) || StayTogetherOnSecond(_found[i].OnSecond.From, onB))
            {
                return;
            }
        }

        bool atEnd = EdgePosition.IsEnd(_a, onA, _toleranceMm) || EdgePosition.IsEnd(_b, onB, _toleranceMm);
        _found = _found.With(
            new Meeting(atEnd ? MeetingKind.Touch : kind, new Stretch(onA, onA), new Stretch(onB, onB), at)
        );
    }

    /// <summary>Whether the first edge stays near the second between two of its fractions.</summary>
    private readonly bool StayTogether(double from, double to) =>
        Distance.Between(_a.PointAt((from + to) / 2), _b).DistanceMm <= _toleranceMm;

    private readonly bool StayTogetherOnSecond(double from, double to) =>
        Distance.Between(_b.PointAt((from + to) / 2), _a).DistanceMm <= _toleranceMm;
}
