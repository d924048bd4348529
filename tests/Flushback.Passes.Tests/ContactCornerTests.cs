using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>The corners that a plan rounds: each that bears, no smaller than wanted, and a rounder kick as it was.</summary>
public sealed class ContactCornerTests
{
    // A contact this near to a vertex lies on it.
    private const double OnVertexMm = 1e-6;

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

    [Fact]
    public void No_sharp_top_of_a_shoulder_is_left_to_bear()
    {
        Assert.All(_plans, plan => Assert.False(BearsSharp(plan.Simulation.End)));
        Assert.True(_plans.Count(plan => Rounds(plan, PassCase.Shoulder)) > 3);
    }

    private static bool Rounds(PlanReport plan, Site corner) =>
        plan.Simulation.Steps.Any(step => step.Pass is RoundCorner round && round.Corner == corner);

    private static double KickRadiusMm(SimulationStep step)
    {
        Knife knife = step.Placement.Knife;
        return knife
            .Blade.Edges.Where((edge, i) => knife.BladeFaces[i] == BladeFace.Kick && edge.IsArc && edge.Bulge > 0)
            .Select(edge => edge.RadiusMm)
            .DefaultIfEmpty(0)
            .Max();
    }

    /// <summary>True when a contact lies on a sharp corner of the shoulder with the spine.</summary>
    private static bool BearsSharp(SimulationStep step)
    {
        Knife knife = step.Placement.Knife;
        return knife
            .Blade.Edges.Where(
                (edge, i) => IsTop(knife, i) && Before(knife.Blade, i).TangentAt(1).Cross(edge.TangentAt(0)) > 0.3
            )
            .Any(edge =>
                step.Readings.Stops.Any(reading =>
                    reading
                        .Contacts.Where(contact => contact.LengthMm == 0)
                        .SelectMany(contact => FaceContacts.PlacesOf(knife, reading, contact, Part.Blade))
                        .Any(place => place.At.IsWithin(OnVertexMm, edge.Start))
                )
            );
    }

    private static Edge Before(Outline outline, int i) =>
        outline.Edges[(i + outline.Edges.Length - 1) % outline.Edges.Length];

    private static bool IsTop(Knife knife, int i) =>
        knife.BladeFaces[i] == BladeFace.Shoulder
        && knife.BladeFaces[(i + knife.BladeFaces.Length - 1) % knife.BladeFaces.Length] == BladeFace.Spine;
}
