using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>Which end of which unit meets which, and where.</summary>
/// <remarks>
/// Ends that coincide are joined first, so that a drawing that is exact never suffers from the tolerance; what is left
/// loose is then joined across gaps. More than two ends in one place is never decided here: it is an error.
/// </remarks>
internal sealed class Joints
{
    private const int Loose = -1;

    private readonly IReadOnlyList<ChainUnit> _units;
    private readonly ChainTolerances _tolerances;
    private readonly List<DxfIssue> _issues;
    private readonly CancellationToken _ct;
    private readonly Point[] _places;
    private readonly int[] _partner;
    private readonly bool[] _atBranch;
    private readonly bool[] _dropped;

    private Joints(
        IReadOnlyList<ChainUnit> units,
        ChainTolerances tolerances,
        List<DxfIssue> issues,
        CancellationToken ct
    )
    {
        _units = units;
        _tolerances = tolerances;
        _issues = issues;
        _ct = ct;
        _places = new Point[2 * units.Count];
        for (int i = 0; i < _places.Length; i++)
        {
            UnitEnd end = UnitEnd.At(i);
            _places[i] = units[end.Unit].End(end.IsLast);
        }

        _partner = new int[_places.Length];
        Array.Fill(_partner, Loose);
        _atBranch = new bool[_places.Length];
        _dropped = new bool[units.Count];
    }

    /// <summary>Joins the ends of all units.</summary>
    public static Joints Of(
        IReadOnlyList<ChainUnit> units,
        ChainTolerances tolerances,
        List<DxfIssue> issues,
        CancellationToken ct
    )
    {
        Joints joints = new(units, tolerances, issues, ct);
        joints.JoinCoincident();
        joints.BridgeGaps();
        return joints;
    }

    /// <summary>The end that meets this one; null when it is loose.</summary>
    public UnitEnd? PartnerOf(UnitEnd end) => _partner[end.Index] == Loose ? null : UnitEnd.At(_partner[end.Index]);

    /// <summary>Where an end lies once joined; both partners lie there exactly.</summary>
    public Point PlaceOf(UnitEnd end) => _places[end.Index];

    /// <summary>True when the end lies where more than two meet.</summary>
    public bool IsAtBranch(UnitEnd end) => _atBranch[end.Index];

    /// <summary>True when the unit was shorter than a gap and was dropped.</summary>
    public bool IsDropped(int unit) => _dropped[unit];

    /// <summary>The ends that meet nothing.</summary>
    public IEnumerable<UnitEnd> LooseEnds => Enumerable.Range(0, _places.Length).Where(IsLoose).Select(UnitEnd.At);

    private bool IsLoose(int end) => _partner[end] == Loose && !_atBranch[end] && !_dropped[end / 2];

    private void JoinCoincident()
    {
        foreach (List<int> group in PointClusters.Of(_places, ChainTolerances.CoincidentMm, _ct))
        {
            if (group.Count == 2)
            {
                Join(group[0], group[1]);
            }
            else
            {
                Branch(group);
            }
        }
    }

    private void BridgeGaps()
    {
        if (_tolerances.JoinMm <= ChainTolerances.CoincidentMm)
        {
            return;
        }

        foreach (List<int> group in PointClusters.Of([.. _places], _tolerances.JoinMm, _ct))
        {
            if (!group.Exists(IsLoose))
            {
                continue;
            }

            DropUnitsWithin(group);
            List<int> loose = group.FindAll(IsLoose);
            if (loose.Count == 2 && _places[loose[0]].IsWithin(_tolerances.JoinMm, _places[loose[1]]))
            {
                _issues.Add(
                    JointIssues.Gap(
                        _units[loose[0] / 2],
                        _units[loose[1] / 2],
                        _places[loose[0]],
                        _places[loose[1]],
                        _tolerances
                    )
                );
                Join(loose[0], loose[1]);
            }
            else if (loose.Count > 0 && (loose.Count > 2 || group.Count > loose.Count) && !IsExcused(group, loose))
            {
                Branch(group.FindAll(end => !_dropped[end / 2] && (IsLoose(end) || _partner[end] != Loose)));
            }
        }
    }

    // A loose end beside a branch point that was reported already, or the far end of a dropped unit: no news.
    private bool IsExcused(List<int> group, List<int> loose) =>
        group.Exists(end => _atBranch[end])
        || group.TrueForAll(end => _dropped[end / 2] || loose.Contains(end)) && loose.Count < 3;

    private void DropUnitsWithin(List<int> group)
    {
        foreach (int end in group)
        {
            _ct.ThrowIfCancellationRequested();
            UnitEnd first = UnitEnd.At(end);
            ChainUnit unit = _units[first.Unit];
            bool isSpeck =
                !first.IsLast
                && IsLoose(end)
                && IsLoose(first.Opposite.Index)
                && unit.LengthMm <= _tolerances.JoinMm
                && group.Contains(first.Opposite.Index);
            if (!isSpeck)
            {
                continue;
            }

            _dropped[first.Unit] = true;
            _issues.Add(JointIssues.Speck(unit, _tolerances, _places[end]));
        }
    }

    private void Join(int a, int b)
    {
        _partner[a] = b;
        _partner[b] = a;
        UnitEnd one = UnitEnd.At(a);
        UnitEnd other = UnitEnd.At(b);
        bool oneIsLine = _units[one.Unit].IsLineAt(one.IsLast);
        bool otherIsLine = _units[other.Unit].IsLineAt(other.IsLast);

        // The end of a line was written down, that of an arc computed from an angle: the line's is the truer place.
        Point meeting =
            oneIsLine == otherIsLine ? _places[a].MidpointTo(_places[b])
            : oneIsLine ? _places[a]
            : _places[b];
        _places[a] = meeting;
        _places[b] = meeting;
    }

    private void Branch(List<int> group)
    {
        foreach (int end in group.Where(end => _partner[end] == Loose))
        {
            _atBranch[end] = true;
        }

        _issues.Add(JointIssues.Branch(group.ConvertAll(end => _units[end / 2].Shape), _places[group[0]]));
    }
}
