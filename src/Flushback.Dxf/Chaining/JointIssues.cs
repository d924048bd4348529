using Flushback.Dxf.Drawings;
using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>What there is to say of ends that meet, or nearly.</summary>
internal static class JointIssues
{
    /// <summary>So many entities are named where too many meet.</summary>
    private const int MostNamed = 6;

    /// <summary>A gap was closed.</summary>
    public static DxfIssue Gap(ChainUnit one, ChainUnit other, Point oneEnd, Point otherEnd, ChainTolerances tolerances)
    {
        string between = one == other ? $"the ends of {one.Shape.Label}" : $"{one.Shape.Label} and {other.Shape.Label}";
        return About(
            one.Shape,
            DxfIssueCodes.GapBridged,
            DxfIssueKind.Repair,
            $"A gap of {Wording.Mm(oneEnd.DistanceTo(otherEnd))} between {between} on layer {one.Shape.Layer} at {Wording.At(oneEnd)} mm was closed.",
            oneEnd.MidpointTo(otherEnd)
        ) with
        {
            Entities = one == other ? [one.Name] : [one.Name, other.Name],
            ValueMm = oneEnd.DistanceTo(otherEnd),
            LimitMm = tolerances.JoinMm,
        };
    }

    /// <summary>A unit within a gap was left out.</summary>
    public static DxfIssue Speck(ChainUnit unit, ChainTolerances tolerances, Point at) =>
        About(
            unit.Shape,
            DxfIssueCodes.ZeroLength,
            DxfIssueKind.Repair,
            $"{unit.Shape.Label} on layer {unit.Shape.Layer} is only {Wording.Mm(unit.LengthMm)} long, less than the joining tolerance of "
                + $"{Wording.Mm(tolerances.JoinMm)}; it was left out.",
            at
        ) with
        {
            Entities = [unit.Name],
            ValueMm = unit.LengthMm,
            LimitMm = tolerances.JoinMm,
        };

    /// <summary>More than two ends meet.</summary>
    public static DxfIssue Branch(List<DxfShape> meeting, Point at)
    {
        string[] names = [.. meeting.Select(shape => shape.Label).Distinct()];
        string named = string.Join(", ", names.Take(MostNamed)) + (names.Length > MostNamed ? " and more" : "");
        return About(
            meeting[0],
            DxfIssueCodes.BranchPoint,
            DxfIssueKind.Error,
            $"{Wording.Whole(meeting.Count)} ends meet at {Wording.At(at)} mm on layer {meeting[0].Layer}, where a contour has two: {named}; "
                + "delete what does not belong to the contour or move it to another layer.",
            at
        ) with
        {
            Entities = [.. meeting.Select(ChainUnit.NameOf).Distinct()],
            Count = meeting.Count,
        };
    }

    private static DxfIssue About(DxfShape shape, string code, DxfIssueKind kind, string sentence, Point at) =>
        new(code, kind, sentence, shape.Handle, shape.Layer, shape.Line, at);
}
