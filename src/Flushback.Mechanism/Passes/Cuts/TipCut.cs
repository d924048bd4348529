using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes.Cuts;

/// <summary>Cuts the tip square to the line from the pivot to it.</summary>
internal static class TipCut
{
    /// <summary>Makes the cut.</summary>
    public static (Workpiece? After, PassProblem? Problem) Make(CutRequest request, ShortenTip pass)
    {
        Workpiece piece = request.Piece;
        Point tip = DrawnBlade.TipOf(piece.Outline);
        Vector outward = (tip - Point.Origin).Normalized;
        Point end = tip - (outward * pass.LengthMm);
        OutlinePlace place = OutlinePlace.Nearest(piece.Outline, tip);
        (CutOutline? cut, CutFailure? failure) = Slice.Of(
            piece.Outline,
            CuttingCurve.Straight(end, end + outward.Left),
            place,
            place,
            SliceReach.Through
        );
        return cut is null ? (null, CutProblems.Of(failure, pass.Site, tip)) : (piece.After(cut, pass.Site), null);
    }
}
