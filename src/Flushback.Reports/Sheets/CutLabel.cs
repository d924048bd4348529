using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>How much a pass takes off, at the place where that counts.</summary>
/// <param name="Pass">Number of the pass, from 1.</param>
/// <param name="Part">The part it comes off.</param>
/// <param name="At">The place, in the frame of the part (blade open, spring as drawn).</param>
/// <param name="Outward">Direction out of the metal there, of length 1.</param>
/// <param name="Words">The amount in both units.</param>
public sealed record CutLabel(int Pass, Part Part, Point At, Vector Outward, string Words)
{
    // Less is 0.0 thou.
    private const double LeastMm = 0.05 * Measure.MmPerThou;

    // Far enough for a difference to tell the direction, near enough to be the same place.
    private const double StepMm = 1e-6;

    /// <summary>The labels of all passes, pass by pass.</summary>
    public static ImmutableArray<CutLabel> AllOf(Simulation simulation, Measure measure)
    {
        ArgumentNullException.ThrowIfNull(simulation);
        List<CutLabel> labels = [];
        SimulationStep before = simulation.Start;
        for (int i = 0; i < simulation.Steps.Length; i++)
        {
            labels.AddRange(Of(i + 1, before, simulation.Steps[i], measure));
            before = simulation.Steps[i];
        }

        return [.. labels];
    }

    private static IEnumerable<CutLabel> Of(int pass, SimulationStep before, SimulationStep step, Measure measure)
    {
        if (
            step.Pass is SlicePass slice
            && DepthPlaces.Of(before.Placement.Knife, before.Readings, slice.Site) is { } places
        )
        {
            (DepthPlace Place, double Mm)[] ends =
            [
                (places.Front, slice.FrontDepthMm),
                (places.Rear, slice.RearDepthMm),
            ];
            foreach ((DepthPlace place, double mm) in ends.Where(end => end.Mm >= LeastMm))
            {
                yield return new CutLabel(pass, slice.Site.Part, place.At, place.Normal, measure.Length(mm));
            }
        }
        else if (Deepest(step) is { } deepest)
        {
            string words = step.Pass switch
            {
                RoundCorner round => $"radius {measure.Length(round.RadiusMm)}",
                ReliefArc relief => $"{measure.Length(relief.DepthMm)} deep",
                { } other => PassWords.Amount(other, measure),
                _ => "",
            };
            yield return new CutLabel(pass, step.Removed!.Part, deepest.At, deepest.Outward, words);
        }
    }

    /// <summary>The place of what came off that lies farthest from what is left.</summary>
    private static (Point At, Vector Outward)? Deepest(SimulationStep step)
    {
        RemovedMetal removed = step.Removed!;
        if (removed.Regions.IsEmpty)
        {
            return null;
        }

        Knife knife = step.Placement.Knife;
        Outline left = removed.Part == Part.Blade ? knife.Blade : knife.Spring;
        Point at = removed
            .Regions.SelectMany(region => region.Edges)
            .SelectMany(edge => (Point[])[edge.Start, edge.PointAt(0.5)])
            .MinBy(left.SignedDistanceMm);
        double Fall(Vector step) => left.SignedDistanceMm(at - step) - left.SignedDistanceMm(at + step);
        return (at, new Vector(Fall(new Vector(StepMm, 0)), Fall(new Vector(0, StepMm))).Normalized);
    }
}
