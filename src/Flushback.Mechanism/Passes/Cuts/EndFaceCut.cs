using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes.Cuts;

/// <summary>Turns the spring's end face about one of its ends.</summary>
internal static class EndFaceCut
{
    private static readonly Site _endFace = Site.On(SpringFace.EndFace);
    private static readonly Site _underside = Site.On(SpringFace.Underside);

    /// <summary>Makes the cut.</summary>
    public static (Workpiece? After, PassProblem? Problem) Make(CutRequest request, DressEndFace pass)
    {
        Workpiece piece = request.Piece;
        if (piece.RunOf(_endFace) is not { } face || piece.RunOf(_underside) is not { } underside)
        {
            return (null, CutProblems.UnknownFace(piece, _endFace, "the end face of the spring"));
        }

        OutlinePlace low = new(piece.Around(face.First), 0);
        OutlinePlace high = new(piece.Around(face.Last), 1);
        Point foot = low.On(piece.Outline);
        Point top = high.On(piece.Outline);

        // Travelling forward along the underside, the end face turns left by what the angle in the metal leaves of a half turn.
        Vector forward = piece.EdgeAt(underside.Last).TangentAt(1);
        Vector wanted = forward.Rotated(new Angle(Math.PI) - pass.AngleInMetal);
        bool leansBackFurther = (top - foot).Cross(wanted) > 0;
        Vector inward = wanted.Left * pass.DepthMm;
        Point turnsAbout = (leansBackFurther ? foot : top) + inward;
        double length = foot.DistanceTo(top);
        CuttingCurve curve = leansBackFurther
            ? CuttingCurve.Straight(turnsAbout, turnsAbout + (wanted * length))
            : CuttingCurve.Straight(turnsAbout - (wanted * length), turnsAbout);
        (CutOutline? cut, CutFailure? failure) = Slice.Of(piece.Outline, curve, low, high, SliceReach.Through);
        return cut is null ? (null, Problem(failure, pass, foot, top)) : (piece.After(cut, _endFace), null);
    }

    private static PassProblem Problem(CutFailure? failure, DressEndFace pass, Point foot, Point top) =>
        failure == CutFailure.NothingTaken
            ? new PassProblem(
                PassReasons.NothingTaken,
                $"The end face already stands at {Said.Degrees(pass.AngleInMetal.Degrees)} to the underside; give another angle or a depth.",
                foot.MidpointTo(top)
            )
            : CutProblems.Of(failure, _endFace, foot);
}
