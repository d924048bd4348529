using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
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
        Assert.All(_plans, plan => Assert.False(BearsSharp(plan.Simulation.End, Part.Blade, BladeFace.Shoulder)));
        Assert.True(_plans.Count(plan => BearsSharp(plan.Simulation.Start, Part.Blade, BladeFace.Shoulder)) > 3);
    }

    /// <remarks>A pad that ends short of where the kick bears lies on the closed face by its rear corner.</remarks>
    [Fact]
    public void The_rear_corner_of_a_short_pad_is_rounded_and_no_other()
    {
        int seen = 0;
        for (int seed = 1; seed < 60; seed++)
        {
            KnifeDesign design = KnifeGenerator.FromSeed(seed);
            Knife knife = (
                design with
                {
                    Spring = design.Spring with { PadEndMm = design.Spring.UndersideMm },
                }
            ).ToKnife();
            PlanReport plan = Planning.Run(PassCase.PlacementOf(knife), new PlanSettings());
            if (plan.ReachesTargets)
            {
                Assert.False(BearsSharp(plan.Simulation.End, Part.Spring, null));
                seen += Rounds(plan, PassCase.Underside) ? 1 : 0;
            }
        }

        Assert.True(seen > 3, $"Only {seen} such pads.");
        Assert.All(_plans, plan => Assert.False(Rounds(plan, PassCase.Underside)));
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

    /// <summary>True when a contact lies on a sharp outer corner: of the shoulder with the spine, or within the spring's underside.</summary>
    private static bool BearsSharp(SimulationStep step, Part part, BladeFace? face)
    {
        Knife knife = step.Placement.Knife;
        Outline outline = part == Part.Blade ? knife.Blade : knife.Spring;
        return Enumerable
            .Range(0, outline.Edges.Length)
            .Where(i => face is null ? IsUnderside(knife, i) : IsTop(knife, i))
            .Select(i =>
                (At: outline.Edges[i].Start, Turn: Before(outline, i).TangentAt(1).Cross(outline.Edges[i].TangentAt(0)))
            )
            .Where(corner => corner.Turn > 0.3)
            .Any(corner =>
                step.Readings.Stops.Any(reading =>
                    reading
                        .Contacts.Where(contact => contact.LengthMm == 0)
                        .SelectMany(contact => FaceContacts.PlacesOf(knife, reading, contact, part))
                        .Any(place => place.At.IsWithin(OnVertexMm, corner.At))
                )
            );
    }

    private static Edge Before(Outline outline, int i) =>
        outline.Edges[(i + outline.Edges.Length - 1) % outline.Edges.Length];

    private static bool IsTop(Knife knife, int i) =>
        knife.BladeFaces[i] == BladeFace.Shoulder
        && knife.BladeFaces[(i + knife.BladeFaces.Length - 1) % knife.BladeFaces.Length] == BladeFace.Spine;

    private static bool IsUnderside(Knife knife, int i) =>
        knife.SpringFaces[i] == SpringFace.Underside
        && knife.SpringFaces[(i + knife.SpringFaces.Length - 1) % knife.SpringFaces.Length] == SpringFace.Underside;
}
