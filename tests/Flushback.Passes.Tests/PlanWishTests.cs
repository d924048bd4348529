using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>What a maker may ask of a plan besides its readings: reliefs, and how deep the tip lies.</summary>
public sealed class PlanWishTests
{
    private static readonly PlanSettings _relieved = new() { ReliefDepthMm = 0.05, ReliefMarginMm = 0.9 };

    public static TheoryData<int> Seeds() => [.. PlanClosure.HighSeeds().Take(6)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_relief_wanted_is_cut_where_a_face_was_and_the_plan_still_lands(int seed)
    {
        PlanClosure closure = PlanClosure.Of(seed, _relieved);
        PlanReport plan = closure.Plan;
        Assert.True(plan.ReachesTargets);
        Site[] sliced = [.. Passes(plan).OfType<FlatSlice>().Select(slice => slice.Face).Distinct()];
        Site[] hollowed = [.. Passes(plan).OfType<ReliefArc>().Select(relief => relief.Face)];
        Assert.Equal(sliced.Where(face => face != PassCase.OpenFlat).Order(_byName), hollowed.Order(_byName));
        Assert.Empty(closure.Spare());
        Assert.Empty(closure.OutOfBalance());
        Assert.Empty(closure.Cheaper(-0.004, 0.004));
    }

    /// <remarks>Margins are told along the face, without the rounds of its corners.</remarks>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_relief_leaves_its_margins_at_both_ends_and_nothing_touches_between(int seed)
    {
        Knife knife = PlanClosure.Of(seed, _relieved).Plan.Simulation.End.Placement.Knife;
        foreach (BladeFace face in new[] { BladeFace.HalfStopFace, BladeFace.ClosedFace })
        {
            Edge[] edges = [.. knife.Blade.Edges.Where((_, i) => knife.BladeFaces[i] == face)];
            int hollow = Array.FindIndex(edges, edge => Math.Abs(edge.SagittaMm - _relieved.ReliefDepthMm) < 1e-6);
            if (edges.Length == 0)
            {
                continue;
            }

            Assert.InRange(hollow, 0, edges.Length - 1);
            Assert.Equal(_relieved.ReliefMarginMm, edges[..hollow].Sum(edge => edge.LengthMm), 1e-6);
            Assert.Equal(_relieved.ReliefMarginMm, edges[(hollow + 1)..].Sum(edge => edge.LengthMm), 1e-6);
        }
    }

    /// <remarks>
    /// The tip turns about the pivot alone, so its depth is a matter of the closed angle (elementary): what it is at an
    /// angle inside the window of angles can be reached.
    /// </remarks>
    [Theory]
    [InlineData(180.4)]
    [InlineData(179.7)]
    public void A_depth_of_the_tip_that_an_angle_in_the_window_gives_is_reached(double angleDeg)
    {
        int moved = 0;
        foreach (int seed in PlanClosure.HighSeeds().Take(8))
        {
            PlanReport free = PlanTests.PlanOf(seed);
            double depth = TipDepthMm(free.Simulation.Start.Placement.Knife, Angle.FromDegrees(angleDeg));
            LengthWindow window = new(depth - 0.05, depth + 0.05);
            PlanReport plan = PlanTests.PlanOf(seed, new PlanSettings { TipDepth = window });

            Assert.True(plan.ReachesTargets, string.Join(' ', plan.Obstacles.Select(obstacle => obstacle.Sentence)));
            Assert.InRange(TipDepthMm(plan), window.LeastMm - 1e-4, window.MostMm + 1e-4);
            Assert.True(plan.RemovedMm2 > free.RemovedMm2 - 1e-6);
            moved += TipDepthMm(free) < window.LeastMm || TipDepthMm(free) > window.MostMm ? 1 : 0;
        }

        Assert.True(moved > 4, $"Only {moved} knives whose tip had to be moved.");
    }

    private static readonly Comparer<Site> _byName = Comparer<Site>.Create(
        (a, b) => string.CompareOrdinal(a.Name, b.Name)
    );

    private static IEnumerable<Pass> Passes(PlanReport plan) => plan.Simulation.Steps.Select(step => step.Pass!);

    private static double TipDepthMm(PlanReport plan)
    {
        SimulationStep end = plan.Simulation.End;
        return TipDepthMm(end.Placement.Knife, end.Readings.At(Stop.Closed)!.RestAngle);
    }

    /// <summary>The blade's farthest vertex from the pivot, turned, against the handle.</summary>
    private static double TipDepthMm(Knife knife, Angle angle)
    {
        Point tip = knife.Blade.Vertices.MaxBy(vertex => vertex.Position.DistanceTo(Point.Origin)).Position;
        return knife.Handle!.SignedDistanceMm(Knife.BladeAt(angle).Apply(tip));
    }
}
