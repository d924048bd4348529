using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>How much may come off the open flat: what is allowed, or less where a pass so deep cannot be made.</summary>
/// <param name="MostMm">The most.</param>
/// <param name="Problem">Why no more can be taken; null when only the settings say so.</param>
internal sealed record OpenFlatLimit(double MostMm, PassProblem? Problem)
{
    private const int Halvings = 12;

    /// <summary>The limit of a knife.</summary>
    public static OpenFlatLimit Of(
        Knife knife,
        StopReadings readings,
        PlanSettings settings,
        CancellationToken cancellation
    )
    {
        PassProblem? Refusal(double depthMm)
        {
            FlatSlice slice = new(Site.On(BladeFace.OpenFlat)) { FrontDepthMm = depthMm, RearDepthMm = depthMm };
            return PassCut.Make(knife, readings, slice, settings.Simulation.Passes, cancellation).Problem;
        }

        double refused = settings.MostOffOpenFlatMm;
        if (refused <= 0 || Refusal(refused) is not { } problem)
        {
            return new OpenFlatLimit(refused, null);
        }

        double made = 0;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (made + refused) / 2;
            if (Refusal(middle) is { } nearer)
            {
                (refused, problem) = (middle, nearer);
            }
            else
            {
                made = middle;
            }
        }

        return new OpenFlatLimit(made, problem);
    }
}
