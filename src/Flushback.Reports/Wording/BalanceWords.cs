using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Plans;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Wording;

/// <summary>Why no smaller removal lands on the targets, in a maker's words.</summary>
internal static class BalanceWords
{
    /// <summary>A fact for each face that is sliced; none where the plan stops short.</summary>
    public static IEnumerable<Fact> Of(PlanReport plan, Measure measure)
    {
        if (plan is not { ReachesTargets: true, Optimum: { } optimum })
        {
            yield break;
        }

        if (optimum.OpenFlatMm > 0)
        {
            yield return new Fact(
                "open flat",
                $"{measure.Length(optimum.OpenFlatMm)}, no more than lets the lowest stop come up to its target;"
                    + $" each thou more would take {PerThou(optimum.OpenFlatMm2PerMm, measure)} more."
            );
        }

        foreach (FaceOptimum face in optimum.Faces.Where(face => face.FrontMm > 0 || face.RearMm > 0))
        {
            if (face.Stop == Stop.Open)
            {
                yield return new Fact(
                    "open flat's tilt",
                    $"front {measure.Length(face.FrontMm)}, rear {measure.Length(face.RearMm)} in all, as much as turns the open blade to the edge of its window."
                );
                continue;
            }

            yield return new Fact(
                face.Stop == Stop.HalfStop ? "half-stop face" : "closed face",
                $"front {measure.Length(face.FrontMm)}, rear {measure.Length(face.RearMm)} in all; a thou lower would take"
                    + $" {PerThou(face.ReadingMultiplier, measure)} more. {WhyNoOtherTilt(face.Held)}"
            );
        }
    }

    private static string PerThou(double mm2PerMm, Measure measure) => measure.SquareMm(mm2PerMm * Measure.MmPerThou);

    private static string WhyNoOtherTilt(TiltHeld held) =>
        held switch
        {
            TiltHeld.ByFrontDepth => "Nothing comes off its front; a cut tilted further would have to add metal there.",
            TiltHeld.ByRearDepth => "Nothing comes off its rear; a cut tilted further would have to add metal there.",
            TiltHeld.ByLeastAngle =>
                "A cut tilted further would take less, but the blade would rest at too small an angle.",
            TiltHeld.ByMostAngle =>
                "A cut tilted further would take less, but the blade would rest at too large an angle.",
            TiltHeld.ByContacts => "Tilted either way the cut changes the contacts and takes more.",
            _ => "Tilted either way the cut takes more.",
        };
}
