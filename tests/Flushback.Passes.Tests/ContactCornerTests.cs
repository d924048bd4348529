using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>The corners that a plan rounds: each that bears, no smaller than wanted, and a rounder kick as it was.</summary>
public sealed class ContactCornerTests
{
    private static readonly PlanReport[] _plans =
    [
        .. Enumerable.Range(1, 60).Select(seed => PlanTests.PlanOf(seed)).Where(plan => plan.ReachesTargets),
    ];

    /// <remarks>Dressing a kick keeps its radius (common practice, no source).</remarks>
    [Fact]
    public void A_kick_keeps_its_radius_where_that_is_larger_than_the_one_wanted()
    {
        int seen = 0;
        foreach (PlanReport plan in _plans)
        {
            double before = KickRadiusMm(plan.Simulation.Start);
            if (before > plan.Settings.LeastCornerRadiusMm)
            {
                Assert.Equal(before, KickRadiusMm(plan.Simulation.End), 1e-6);
                seen++;
            }
        }

        Assert.True(seen > 3, $"Only {seen} such kicks.");
    }

    /// <remarks>Rounding it lets the blade open too far and moves the zero most of all (common practice, no source).</remarks>
    [Fact]
    public void The_top_of_the_shoulder_stays_as_it_is() =>
        Assert.All(
            _plans,
            plan =>
                Assert.DoesNotContain(
                    plan.Simulation.Steps,
                    step => step.Pass is RoundCorner { Corner: { } corner } && corner == PassCase.Shoulder
                )
        );

    private static double KickRadiusMm(SimulationStep step)
    {
        Knife knife = step.Placement.Knife;
        return knife
            .Blade.Edges.Where((edge, i) => knife.BladeFaces[i] == BladeFace.Kick && edge.IsArc && edge.Bulge > 0)
            .Select(edge => edge.RadiusMm)
            .DefaultIfEmpty(0)
            .Max();
    }
}
