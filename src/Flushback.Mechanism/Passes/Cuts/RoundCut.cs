using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes.Cuts;

/// <summary>Rounds a named corner.</summary>
internal static class RoundCut
{
    private const string Rounded =
        "open corner, closed corner, kick, shoulder (its top), nose corner and underside (the rear corner of its pad)";

    // A round this little larger than the one there is the same.
    private const double SameMm = 1e-9;

    /// <summary>Makes the cut.</summary>
    public static (Workpiece? After, PassProblem? Problem) Make(CutRequest request, RoundCorner pass)
    {
        Workpiece piece = request.Piece;
        if (Refuse(pass.Corner) is { } refused)
        {
            return (null, refused);
        }

        if (CornerSpot.Of(piece, pass.Corner) is not { } spot)
        {
            return (
                null,
                new PassProblem(
                    PassReasons.NoCorner,
                    $"This knife has no {pass.Corner.Name} to round; name another corner, or mark the edges in the drawing."
                )
            );
        }

        Point at = spot.Middle(piece);
        if (spot.RadiusIn(piece) is { } there && pass.RadiusMm <= there + SameMm)
        {
            return (
                null,
                new PassProblem(
                    PassReasons.AddsMetal,
                    $"The {pass.Corner.Name} {CutProblems.Place(at)} already has a radius of {Said.Length(there)}; a smaller one would add metal: give a larger one or leave the pass out.",
                    at
                )
            );
        }

        if (spot.TurnIn(piece) <= 0)
        {
            return (
                null,
                new PassProblem(
                    PassReasons.NoCorner,
                    $"The {pass.Corner.Name} {CutProblems.Place(at)} does not point out of the metal, so there is nothing to round.",
                    at
                )
            );
        }

        (CutOutline? cut, CutFailure? failure) = Rounding.Of(
            piece.Outline,
            spot.Before,
            spot.After,
            pass.RadiusMm,
            request.Cancellation
        );
        return cut is null ? (null, Problem(failure, pass, at)) : (piece.After(cut, pass.Corner), null);
    }

    private static PassProblem Problem(CutFailure? failure, RoundCorner pass, Point at) =>
        failure == CutFailure.NothingTaken
            ? new PassProblem(
                PassReasons.AddsMetal,
                $"The {pass.Corner.Name} {CutProblems.Place(at)} is already rounder than {Said.Length(pass.RadiusMm)}; a round of that radius would add metal: give a larger one or leave the pass out.",
                at
            )
            : CutProblems.Of(failure, pass.Corner, at);

    private static PassProblem? Refuse(Site corner) =>
        corner.Blade switch
        {
            BladeFace.NotchCorner => new PassProblem(
                PassReasons.AddsMetal,
                "The notch corner points into the metal: rounding it would add metal; relieve it in the drawing instead."
            ),
            BladeFace.OpenCorner or BladeFace.ClosedCorner or BladeFace.Kick or BladeFace.Shoulder => null,
            null when corner.Spring is SpringFace.NoseCorner or SpringFace.Underside => null,
            _ => new PassProblem(
                PassReasons.NoCorner,
                $"The {corner.Name} is no corner; what can be rounded is {Rounded}."
            ),
        };
}
