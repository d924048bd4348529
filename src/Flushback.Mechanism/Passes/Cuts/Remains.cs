using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Checking;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes.Cuts;

/// <summary>Looks at what a pass has left: one sound piece, every face, metal around the pins.</summary>
internal static class Remains
{
    // Areas and walls that differ by less are equal: rounding.
    private const double SameMm = 1e-9;

    /// <summary>Why the pass must not be made; null when what is left is in order.</summary>
    public static PassProblem? Check(
        Workpiece before,
        Workpiece after,
        Knife knife,
        Pass pass,
        PassSettings settings,
        CancellationToken cancellation
    ) =>
        Walls(before, after, knife, pass, settings)
        ?? Pieces(after, pass, cancellation)
        ?? Faces(before, after, pass, settings)
        ?? Metal(before, after, pass);

    private static PassProblem? Walls(Workpiece before, Workpiece after, Knife knife, Pass pass, PassSettings settings)
    {
        foreach ((string name, Circle pin) in PinsOf(knife, pass.Site.Part))
        {
            double was = before.Outline.SignedDistanceMm(pin.Centre) - pin.RadiusMm;
            double left = after.Outline.SignedDistanceMm(pin.Centre) - pin.RadiusMm;
            if (left < settings.LeastPinWallMm && left < was - SameMm)
            {
                return new PassProblem(
                    PassReasons.CutsPin,
                    left < 0
                        ? $"The pass on the {pass.Site.Name} cuts into the hole of the {name}; make it less deep."
                        : $"The pass on the {pass.Site.Name} leaves {Said.Length(left)} of metal around the hole of the {name}, less than {Said.Length(settings.LeastPinWallMm)}; make it less deep.",
                    pin.Centre
                );
            }
        }

        return null;
    }

    private static IEnumerable<(string Name, Circle Pin)> PinsOf(Knife knife, Part part)
    {
        if (part == Part.Blade)
        {
            yield return ("pivot", new Circle(Point.Origin, knife.PivotRadiusMm));
            yield break;
        }

        yield return ("centre pin", knife.CentrePin);
        if (knife.RearPin is { } rear)
        {
            yield return ("rear pin", rear);
        }
    }

    private static PassProblem? Pieces(Workpiece after, Pass pass, CancellationToken cancellation)
    {
        ImmutableArray<OutlineFlaw> flaws = OutlineCheck.FlawsOf(
            after.Outline.Vertices.AsSpan(),
            GeometryTolerances.Default,
            cancellation
        );
        return flaws.IsEmpty && after.Outline.IsCounterClockwise
            ? null
            : new PassProblem(
                PassReasons.TwoPieces,
                $"The pass on the {pass.Site.Name} would leave the {(pass.Site.Part == Part.Blade ? "blade" : "spring")} in two pieces; make it less deep.",
                flaws.IsEmpty ? null : flaws[0].At
            );
    }

    private static PassProblem? Faces(Workpiece before, Workpiece after, Pass pass, PassSettings settings)
    {
        foreach (Site face in before.Sites.Distinct().Where(MustStay))
        {
            double was = before.LengthOf(face);
            double left = after.LengthOf(face);
            double least = IsFace(face) ? Math.Min(settings.LeastFaceMm, was) : 0;
            if (left <= 0 || left < least - SameMm)
            {
                string rest = left <= 0 ? "" : $" all but {Said.Length(left)} of";
                return new PassProblem(
                    PassReasons.ConsumesFace,
                    $"The pass on the {pass.Site.Name} takes away{rest} the {face.Name}, which has to stay; make it smaller."
                );
            }
        }

        return null;
    }

    private static PassProblem? Metal(Workpiece before, Workpiece after, Pass pass) =>
        after.Outline.AreaMm2 < before.Outline.AreaMm2
            ? null
            : new PassProblem(
                PassReasons.AddsMetal,
                $"The pass on the {pass.Site.Name} would add metal; a pass only takes it off."
            );

    /// <summary>A round of a corner may go, the kick's too, for the slice leaves a corner there; all else that has a name has to stay.</summary>
    private static bool MustStay(Site site) =>
        site.Spring is { } spring
            ? spring is not (SpringFace.NoseCorner or SpringFace.Unknown)
            : site.Blade
                is not (BladeFace.OpenCorner or BladeFace.ClosedCorner or BladeFace.Kick or BladeFace.Unknown or null);

    private static bool IsFace(Site site) =>
        site.Spring is SpringFace.Underside or SpringFace.EndFace
        || site.Blade is BladeFace.OpenFlat or BladeFace.Shoulder or BladeFace.HalfStopFace or BladeFace.ClosedFace;
}
