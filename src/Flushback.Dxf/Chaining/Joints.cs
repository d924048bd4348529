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

    private readonly IReadOnlyList<ChainUnit> units;
    private readonly ChainTolerances tolerances;
    private readonly List<DxfIssue> issues;
    private readonly Point[] places;
    private readonly int[] partner;
    private readonly bool[] atBranch;
    private readonly bool[] dropped;

    private Joints(IReadOnlyList<ChainUnit> units, ChainTolerances tolerances, List<DxfIssue> issues)
    {
        this.units = units;
        this.tolerances = tolerances;
        this.issues = issues;
        places = new Point[2 * units.Count];
        for (int i = 0; i < places.Length; i++)
        {
            UnitEnd end = UnitEnd.At(i);
            places[i] = units[end.Unit].End(end.IsLast);
        }

        partner = new int[places.Length];
        Array.Fill(partner, Loose);
        atBranch = new bool[places.Length];
        dropped = new bool[units.Count];
    }

    /// <summary>Joins the ends of all units.</summary>
    public static Joints Of(IReadOnlyList<ChainUnit> units, ChainTolerances tolerances, List<DxfIssue> issues)
    {
        Joints joints = new(units, tolerances, issues);
        joints.JoinCoincident();
        joints.BridgeGaps();
        return joints;
    }

    /// <summary>The end that meets this one; null when it is loose.</summary>
    public UnitEnd? PartnerOf(UnitEnd end) => partner[end.Index] == Loose ? null : UnitEnd.At(partner[end.Index]);

    /// <summary>Where an end lies once joined; both partners lie there exactly.</summary>
    public Point PlaceOf(UnitEnd end) => places[end.Index];

    /// <summary>True when the end lies where more than two meet.</summary>
    public bool IsAtBranch(UnitEnd end) => atBranch[end.Index];

    /// <summary>True when the unit was shorter than a gap and was dropped.</summary>
    public bool IsDropped(int unit) => dropped[unit];

    /// <summary>The ends that meet nothing.</summary>
    public IEnumerable<UnitEnd> LooseEnds => Enumerable.Range(0, places.Length).Where(IsLoose).Select(UnitEnd.At);

    private bool IsLoose(int end) => partner[end] == Loose && !atBranch[end] && !dropped[end / 2];

    private void JoinCoincident()
    {
        foreach (List<int> group in PointClusters.Of(places, ChainTolerances.CoincidentMm))
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
        if (tolerances.JoinMm <= ChainTolerances.CoincidentMm)
        {
            return;
        }

        foreach (List<int> group in PointClusters.Of([.. places], tolerances.JoinMm))
        {
            DropUnitsWithin(group);
            List<int> loose = group.FindAll(IsLoose);
            if (loose.Count == 2 && places[loose[0]].IsWithin(tolerances.JoinMm, places[loose[1]]))
            {
                issues.Add(
                    JointIssues.Gap(units[loose[0] / 2], units[loose[1] / 2], places[loose[0]], places[loose[1]])
                );
                Join(loose[0], loose[1]);
            }
            else if (loose.Count > 0 && (loose.Count > 2 || group.Count > loose.Count) && !IsExcused(group, loose))
            {
                Branch(group.FindAll(end => !dropped[end / 2] && (IsLoose(end) || partner[end] != Loose)));
            }
        }
    }

    // A loose end beside a branch point that was reported already, or the far end of a dropped unit: no news.
    private bool IsExcused(List<int> group, List<int> loose) =>
        group.Exists(end => atBranch[end])
        || group.TrueForAll(end => dropped[end / 2] || loose.Contains(end)) && loose.Count < 3;

    private void DropUnitsWithin(List<int> group)
    {
        foreach (int end in group)
        {
            UnitEnd first = UnitEnd.At(end);
            ChainUnit unit = units[first.Unit];
            bool isSpeck =
                !first.IsLast
                && IsLoose(end)
                && IsLoose(first.Opposite.Index)
                && unit.LengthMm <= tolerances.JoinMm
                && group.Contains(first.Opposite.Index);
            if (!isSpeck)
            {
                continue;
            }

            dropped[first.Unit] = true;
            issues.Add(JointIssues.Speck(unit, tolerances, places[end]));
        }
    }

    private void Join(int a, int b)
    {
        partner[a] = b;
        partner[b] = a;
        UnitEnd one = UnitEnd.At(a);
        UnitEnd other = UnitEnd.At(b);
        bool oneIsLine = units[one.Unit].IsLineAt(one.IsLast);
        bool otherIsLine = units[other.Unit].IsLineAt(other.IsLast);

        // The end of a line was written down, that of an arc computed from an angle: the line's is the truer place.
        Point meeting =
            oneIsLine == otherIsLine ? places[a].MidpointTo(places[b])
            : oneIsLine ? places[a]
            : places[b];
        places[a] = meeting;
        places[b] = meeting;
    }

    private void Branch(List<int> group)
    {
        foreach (int end in group.Where(end => partner[end] == Loose))
        {
            atBranch[end] = true;
        }

        issues.Add(JointIssues.Branch(group.ConvertAll(end => units[end / 2].Shape), places[group[0]]));
    }
}
