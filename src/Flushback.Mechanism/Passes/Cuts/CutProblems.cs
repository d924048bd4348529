using Flushback.Geometry;
using Flushback.Geometry.Removal;

namespace Flushback.Mechanism.Passes.Cuts;

/// <summary>Says why a cut could not be made.</summary>
internal static class CutProblems
{
    /// <summary>A face the part does not have, or that this pass does not work on.</summary>
    public static PassProblem UnknownFace(Workpiece piece, Site face, string wanted) =>
        piece.RunOf(face) is null
            ? new PassProblem(
                PassReasons.UnknownFace,
                $"This knife has no {face.Name}; name a face it has, or mark the edge in the drawing as one."
            )
            : new PassProblem(
                PassReasons.UnknownFace,
                $"This pass does not work on the {face.Name}, only on {wanted}."
            );

    /// <summary>What a failed cut means for a maker.</summary>
    public static PassProblem Of(CutFailure? failure, Site site, Point at) =>
        failure switch
        {
            CutFailure.NothingTaken => new PassProblem(
                PassReasons.NothingTaken,
                $"The pass on the {site.Name} takes nothing off: the face already lies deeper {Place(at)}; make it deeper or leave it out.",
                at
            ),
            CutFailure.TakesEverything => new PassProblem(
                PassReasons.TwoPieces,
                $"The pass on the {site.Name} {Place(at)} would take the whole part away; make it less deep.",
                at
            ),
            CutFailure.NeighbourNotMet => new PassProblem(
                PassReasons.ConsumesFace,
                $"Cut so deep, the {site.Name} {Place(at)} no longer meets the face beside it; make the pass less deep.",
                at
            ),
            _ => new PassProblem(
                PassReasons.ToolDoesNotFit,
                $"No round of this radius fits the {site.Name} {Place(at)}; make the radius smaller.",
                at
            ),
        };

    /// <summary>A place in the frame of the part, for a sentence.</summary>
    public static string Place(Point at) =>
        FormattableString.Invariant($"at x {at.X:0.00}, y {at.Y:0.00} mm from the pivot");
}
