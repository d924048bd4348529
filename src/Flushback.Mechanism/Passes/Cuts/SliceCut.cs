using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes.Cuts;

/// <summary>Takes a face down through two points, straight or with a wheel.</summary>
internal static class SliceCut
{
    private const string Sliced =
        "open flat, shoulder, half-stop face and closed face of the blade, underside and end face of the spring";

    // The neighbours of an inner round pass into it without a corner: sine of the turn.
    private const double Smooth = 1e-6;

    /// <summary>Makes the cut.</summary>
    public static (Workpiece? After, PassProblem? Problem) Make(CutRequest request, SlicePass pass)
    {
        Workpiece piece = request.Piece;
        if (DepthPlaces.Stretch.Of(piece, request.Knife, request.Readings, pass.Site) is not { } stretch)
        {
            return (null, CutProblems.UnknownFace(piece, pass.Site, Sliced));
        }

        (double firstMm, double lastMm) = stretch.FrontIsFirst
            ? (pass.FrontDepthMm, pass.RearDepthMm)
            : (pass.RearDepthMm, pass.FrontDepthMm);
        Point from = stretch.First.At - (stretch.First.Normal * firstMm);
        Point to = stretch.Last.At - (stretch.Last.Normal * lastMm);
        if (pass is not WheelSlice wheel)
        {
            return Through(piece, stretch, CuttingCurve.Straight(from, to), pass.Site);
        }

        double least = from.DistanceTo(to) / 2;
        if (wheel.WheelRadiusMm < least)
        {
            return (
                null,
                new PassProblem(
                    PassReasons.ToolDoesNotFit,
                    $"A wheel of {Said.Length(wheel.WheelRadiusMm)} radius cannot reach both contacts of the {pass.Site.Name}; take one of at least {Said.Length(least)}.",
                    from.MidpointTo(to)
                )
            );
        }

        return Through(piece, stretch, CuttingCurve.Wheel(from, to, wheel.WheelRadiusMm), pass.Site);
    }

    /// <summary>Cuts a face along a curve from end to end.</summary>
    public static (Workpiece? After, PassProblem? Problem) Through(
        Workpiece piece,
        DepthPlaces.Stretch stretch,
        CuttingCurve curve,
        Site face
    )
    {
        (int? before, int? after) = WallsOf(piece, face);
        if (curve.Carrier.IsArc && Reaches(piece, before ?? after, curve))
        {
            return (
                null,
                new PassProblem(
                    PassReasons.ToolDoesNotFit,
                    $"The wheel does not fit into the notch: it would cut into the {piece.Sites[(before ?? after)!.Value].Name}; take the {face.Name} down flat, or with another tool.",
                    stretch.First.At
                )
            );
        }

        (CutOutline? cut, CutFailure? failure) = Slice.Of(
            piece.Outline,
            curve,
            stretch.From,
            stretch.To,
            new SliceReach(GoesOn: true, before, after)
        );
        return cut is null
            ? (null, CutProblems.Of(failure, face, stretch.First.At))
            : InnerRoundKept(piece, piece.After(cut, face), face);
    }

    /// <summary>In the notch the tool runs against the face on the other side of the inner corner.</summary>
    private static (int? Before, int? After) WallsOf(Workpiece piece, Site face) =>
        face.Blade switch
        {
            BladeFace.OpenFlat when piece.RunOf(Site.On(BladeFace.Shoulder)) is { } run => (
                piece.Around(run.Last),
                null
            ),
            BladeFace.Shoulder when piece.RunOf(Site.On(BladeFace.OpenFlat)) is { } run => (
                null,
                piece.Around(run.First)
            ),
            _ => (null, null),
        };

    private static bool Reaches(Workpiece piece, int? wall, CuttingCurve curve)
    {
        if (wall is not { } index)
        {
            return false;
        }

        Edge edge = piece.Outline.Edges[index];
        return Math.Max(curve.DepthMm(edge.Start), curve.DepthMm(edge.PointAt(0.5))) > 0;
    }

    /// <summary>A round in the notch's inner corner goes down with the face and keeps its radius.</summary>
    private static (Workpiece? After, PassProblem? Problem) InnerRoundKept(Workpiece before, Workpiece after, Site face)
    {
        Site corner = Site.On(BladeFace.NotchCorner);
        bool isBeside = face.Blade is BladeFace.OpenFlat or BladeFace.Shoulder;
        if (!isBeside || before.RunOf(corner) is not { Count: 1 } run || after.RunOf(corner) is not null)
        {
            return (after, null);
        }

        Edge round = before.EdgeAt(run.First);
        bool isRound = IsSmooth(before.EdgeAt(run.First - 1), round) && IsSmooth(round, before.EdgeAt(run.First + 1));
        int wall = Enumerable
            .Range(0, after.Count)
            .FirstOrDefault(
                i => after.Sites[i].Blade == BladeFace.Shoulder && after.SiteAt(i + 1).Blade == BladeFace.OpenFlat,
                -1
            );
        if (!isRound || !round.IsArc || wall < 0)
        {
            return (after, null);
        }

        // The new round lies inside the old outline, as the two faces do: filling the corner up to it adds no metal.
        (CutOutline? cut, _) = Fillet.Of(after.Outline, wall, after.Around(wall + 1), round.RadiusMm, convex: false);
        return cut is null ? (after, null) : (after.After(cut, corner), null);
    }

    private static bool IsSmooth(Edge before, Edge after) =>
        Math.Abs(before.TangentAt(1).Cross(after.TangentAt(0))) < Smooth;
}
