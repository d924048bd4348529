using Flushback.Geometry.Removal;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes.Cuts;

/// <summary>Takes the kick down and rounds it again as it was.</summary>
internal static class KickCut
{
    private static readonly Site _kick = Site.On(BladeFace.Kick);
    private static readonly Site _closedFace = Site.On(BladeFace.ClosedFace);

    /// <summary>Makes the cut.</summary>
    public static (Workpiece? After, PassProblem? Problem) Make(CutRequest request, DressKick pass)
    {
        Workpiece piece = request.Piece;
        if (
            CornerSpot.Of(piece, _kick) is not { } spot
            || DepthPlaces.Stretch.Of(piece, request.Knife, request.Readings, _closedFace) is not { } stretch
        )
        {
            return (null, CutProblems.UnknownFace(piece, _kick, "the kick below a closed face"));
        }

        double? radius = spot.RadiusIn(piece);
        CuttingCurve curve = CuttingCurve.Straight(
            stretch.First.At,
            stretch.Last.At - (stretch.Last.Normal * pass.DepthMm)
        );
        (Workpiece? sliced, PassProblem? problem) = SliceCut.Through(piece, stretch, curve, _closedFace);
        if (sliced is null || radius is not { } wanted || CornerSpot.Of(sliced, _kick) is not { } left)
        {
            return (sliced, problem);
        }

        // A face so hollow that the cut leaves the kick as round as it was needs no more.
        (CutOutline? cut, CutFailure? failure) = Rounding.Of(
            sliced.Outline,
            left.Before,
            left.After,
            wanted,
            request.Cancellation
        );
        return cut is not null ? (sliced.After(cut, _kick), null)
            : failure == CutFailure.NothingTaken ? (sliced, null)
            : (null, CutProblems.Of(failure, _kick, left.Middle(sliced)));
    }
}
