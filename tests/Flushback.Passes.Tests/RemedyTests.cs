using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>What a plan that reads low says would help, does: each change is made on the knife, which is read again.</summary>
public sealed class RemedyTests
{
    // A tenth of a thou: the sentences give no more.
    private const double SaidMm = 0.1 * StopTargets.MmPerThou;

    private static readonly PlanSettings _flatStays = new() { MostOffOpenFlatMm = 0, LeastCornerRadiusMm = 0 };

    private static readonly (PlanReport Plan, PlanObstacle Obstacle)[] _low = LowOnes(design => design);

    /// <remarks>The knife frame has the pivot at its origin, so the blade goes the other way about it.</remarks>
    [Fact]
    public void A_pivot_moved_in_the_blade_as_advised_brings_the_stop_to_its_target() =>
        AssertReached(
            _low,
            obstacle => (object?)obstacle.PivotMoveMm,
            (knife, move) => knife with { Blade = knife.Blade.Transformed(new RigidMotion(Angle.Zero, -(Vector)move)) }
        );

    /// <remarks>
    /// The closed face bears at the foot of the perpendicular from the pivot: taken off again, what stands prouder lowers
    /// the reading by about itself (rigid bodies, elementary), so the advice is about what the reading lacks.
    /// </remarks>
    [Fact]
    public void A_face_has_to_stand_prouder_by_about_what_the_reading_lacks()
    {
        (PlanReport, PlanObstacle Obstacle)[] advised = [.. _low.Where(low => low.Obstacle.ProuderFaceMm is not null)];
        Assert.True(advised.Length > 10, $"Only {advised.Length} such pieces of advice.");
        Assert.All(advised, low => Assert.InRange(low.Obstacle.ProuderFaceMm!.Value / low.Obstacle.ShortMm, 0.6, 1.7));
    }

    [Fact]
    public void Every_remedy_is_told_in_a_sentence_with_its_amount()
    {
        foreach ((PlanReport _, PlanObstacle obstacle) in _low)
        {
            Assert.All(obstacle.Remedies, remedy => Assert.EndsWith(".", remedy, StringComparison.Ordinal));
            Assert.Equal(
                obstacle.PivotMoveMm is not null,
                obstacle.Remedies.Any(remedy => remedy.StartsWith("Move the pivot", StringComparison.Ordinal))
            );
            Assert.Contains(obstacle.Remedies, remedy => remedy.StartsWith("A new blade", StringComparison.Ordinal));
        }
    }

    /// <remarks>
    /// Where the shoulder holds the open blade it bears on its open corner alone, behind where half stop and closed count; so
    /// metal off the nose there lowers open more (rigid bodies, elementary). It does little, and on few knives: the open flat
    /// gives all but that.
    /// </remarks>
    [Fact]
    public void A_nose_thinned_at_its_rear_as_advised_brings_a_stop_that_lacks_little_to_its_target()
    {
        int seen = 0;
        foreach (int seed in Enumerable.Range(1, 60))
        {
            Placement knife = PassCase.PlacementOf(KnifeGenerator.FromSeed(seed).ToKnife());
            double? needed = Planning
                .Run(knife, _flatStays)
                .Obstacles.Select(obstacle => obstacle.OpenFlatNeededMm)
                .DefaultIfEmpty(null)
                .Max();
            if (needed is not > 0.05)
            {
                continue;
            }

            PlanReport plan = Planning.Run(knife, _flatStays with { MostOffOpenFlatMm = needed.Value - 0.04 });
            foreach (PlanObstacle obstacle in plan.Obstacles.Where(obstacle => obstacle.ThinnerNoseMm is not null))
            {
                seen++;
                PassCase end = new(plan.Simulation.End.Placement.Knife);
                LowerNose pass = new() { FrontDepthMm = 0, RearDepthMm = obstacle.ThinnerNoseMm!.Value };
                Assert.Equal(_flatStays.AimMm(obstacle.Stop), end.After(pass).LiftMm(obstacle.Stop), SaidMm);
                Assert.Contains(
                    obstacle.Remedies,
                    remedy => remedy.StartsWith("Lower the spring's nose", StringComparison.Ordinal)
                );
            }
        }

        Assert.True(seen > 0, "No such piece of advice.");
    }

    private static (PlanReport Plan, PlanObstacle Obstacle)[] LowOnes(Func<KnifeDesign, KnifeDesign> drawn) =>
        [
            .. Enumerable
                .Range(1, 40)
                .Select(seed =>
                    Planning.Run(PassCase.PlacementOf(drawn(KnifeGenerator.FromSeed(seed)).ToKnife()), _flatStays)
                )
                .SelectMany(plan =>
                    plan.Obstacles.Where(obstacle => obstacle.Constraint == PlanConstraint.ReadsLow)
                        .Select(obstacle => (plan, obstacle))
                ),
        ];

    private static void AssertReached<T>(
        (PlanReport, PlanObstacle)[] low,
        Func<PlanObstacle, T?> advice,
        Func<Knife, T, Knife> change
    )
    {
        int seen = 0;
        foreach ((PlanReport plan, PlanObstacle obstacle) in low)
        {
            if (advice(obstacle) is { } amount)
            {
                seen++;
                Knife changed = change(plan.Simulation.End.Placement.Knife, amount);
                Assert.Equal(_flatStays.AimMm(obstacle.Stop), Read(changed).At(obstacle.Stop)!.LiftMm, SaidMm);
            }
        }

        Assert.True(seen > 5, $"Only {seen} such pieces of advice.");
    }

    private static StopReadings Read(Knife knife) => StopCheck.Run(knife, new BenchSettings()).Readings;
}
