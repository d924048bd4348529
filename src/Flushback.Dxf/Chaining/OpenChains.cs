using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>Says of a chain that does not close where its ends are and how wide the gaps are.</summary>
internal sealed class OpenChains(IReadOnlyList<ChainUnit> units, Joints joints, ChainTolerances tolerances)
{
    /// <summary>So many open chains are told one by one; a layer with more is no outline at all.</summary>
    private const int ToldOneByOne = 20;

    private readonly UnitEnd[] _looseEnds = [.. joints.LooseEnds];
    private int _told;

    /// <summary>The error for one open chain, or null when enough has been said.</summary>
    public DxfIssue? Tell(Chain chain)
    {
        if (joints.IsAtBranch(chain.First) || joints.IsAtBranch(chain.Last) || ++_told > ToldOneByOne)
        {
            return null;
        }

        ChainUnit first = units[chain.First.Unit];
        ChainUnit last = units[chain.Last.Unit];
        Point from = joints.PlaceOf(chain.First);
        Point to = joints.PlaceOf(chain.Last);
        string pieces =
            first == last
                ? first.Shape.Label
                : $"{Wording.Whole(chain.Entries.Count)} joined entities, from {first.Shape.Label} to {last.Shape.Label},";
        return new DxfIssue(
            DxfIssueCodes.OpenChain,
            DxfIssueKind.Error,
            $"On layer {first.Shape.Layer}, {pieces} {(first == last ? "does" : "do")} not close: the ends lie at {Wording.At(from)} "
                + $"and {Wording.At(to)} mm{Gaps(chain, from, to)}; draw the missing part or join the ends (the tolerance is "
                + $"{Wording.Mm(tolerances.JoinMm)}).",
            first.Shape.Handle,
            first.Shape.Layer,
            first.Shape.Line,
            from
        );
    }

    /// <summary>The error that stands for all chains past those told one by one; null when there are none.</summary>
    public DxfIssue? Rest(string layer) =>
        _told <= ToldOneByOne
            ? null
            : new DxfIssue(
                DxfIssueCodes.OpenChain,
                DxfIssueKind.Error,
                $"Layer {layer} holds {Wording.Whole(_told - ToldOneByOne)} more chains that do not close.",
                Layer: layer
            );

    private string Gaps(Chain chain, Point from, Point to)
    {
        double ownGap = from.DistanceTo(to);
        UnitEnd? nearFrom = NearestTo(chain.First, chain.Last);
        UnitEnd? nearTo = NearestTo(chain.Last, chain.First);
        string gaps = $", {Wording.Mm(ownGap)} apart";
        if (nearFrom is { } a && joints.PlaceOf(a).DistanceTo(from) < ownGap)
        {
            gaps += $"; the first is {Wording.Mm(joints.PlaceOf(a).DistanceTo(from))} from {units[a.Unit].Shape.Label}";
        }

        if (nearTo is { } b && joints.PlaceOf(b).DistanceTo(to) < ownGap)
        {
            gaps += $"; the second is {Wording.Mm(joints.PlaceOf(b).DistanceTo(to))} from {units[b.Unit].Shape.Label}";
        }

        return gaps;
    }

    private UnitEnd? NearestTo(UnitEnd end, UnitEnd otherEndOfChain)
    {
        Point place = joints.PlaceOf(end);
        UnitEnd? nearest = null;
        double least = double.PositiveInfinity;
        foreach (UnitEnd candidate in _looseEnds)
        {
            double distance = joints.PlaceOf(candidate).DistanceTo(place);
            if (candidate != end && candidate != otherEndOfChain && distance < least)
            {
                least = distance;
                nearest = candidate;
            }
        }

        return nearest;
    }
}
