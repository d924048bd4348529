using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>Knives that no removal brings to their targets: what stops them is named, and what would do it does.</summary>
public sealed class UnreachablePlanTests
{
    // Run once on 50.
    private const int Knives = 20;

    private static readonly PlanSettings _flatStays = new() { MostOffOpenFlatMm = 0, LeastCornerRadiusMm = 0 };

    /// <remarks>No pass but one on the open flat raises a reading (elementary: metal off lowers the lift or leaves it).</remarks>
    [Fact]
    public void A_stop_that_reads_low_is_named_when_the_open_flat_has_to_stay()
    {
        int seen = 0;
        for (int seed = 1; seen < Knives; seed++)
        {
            PassCase knife = new(KnifeGenerator.FromSeed(seed));
            Stop[] low = [.. knife.Readings.Stops.Where(IsLow).Select(reading => reading.Stop)];
            bool isOpenRight =
                Math.Abs(knife.Readings.Stops[0].RestAngle.Radians) < _flatStays.OpenAngleTolerance.Radians;
            if (low.Length == 0 || !isOpenRight)
            {
                continue;
            }

            PlanReport plan = PlanTests.PlanOf(seed, _flatStays);
            Assert.False(plan.ReachesTargets);
            foreach (Stop stop in low)
            {
                PlanObstacle obstacle = Assert.Single(plan.Obstacles, obstacle => obstacle.Stop == stop);
                Assert.True(obstacle.Constraint == PlanConstraint.ReadsLow, $"seed {seed}: {obstacle.Sentence}");
                Assert.Equal(_flatStays.AimMm(stop) - Reading(plan, stop), obstacle.ShortMm, 1e-9);
                Assert.NotEmpty(obstacle.Remedies);
            }

            seen++;
        }
    }

    [Fact]
    public void Lowering_the_open_flat_as_advised_reaches_the_target()
    {
        int seen = 0;
        for (int seed = 1; seed < 40; seed++)
        {
            PlanReport refused = PlanTests.PlanOf(seed, _flatStays);
            if (
                refused.Obstacles.IsEmpty
                || !refused.Obstacles.All(obstacle => obstacle.Constraint == PlanConstraint.ReadsLow)
            )
            {
                continue;
            }

            double[] advised = [.. refused.Obstacles.Select(obstacle => obstacle.OpenFlatNeededMm).OfType<double>()];
            if (advised.Length < refused.Obstacles.Length)
            {
                continue;
            }

            PlanReport lowered = PlanTests.PlanOf(seed, _flatStays with { MostOffOpenFlatMm = advised.Max() + 1e-5 });
            Assert.All(lowered.Obstacles, obstacle => Assert.NotEqual(PlanConstraint.ReadsLow, obstacle.Constraint));
            Assert.Contains(lowered.Simulation.Steps, step => step.Pass!.Site == PassCase.OpenFlat);
            seen++;
        }

        Assert.True(seen > 3, $"Only {seen} knives with such advice.");
    }

    [Fact]
    public void A_tip_that_no_closed_angle_brings_to_its_depth_is_named()
    {
        PassCase knife = PassCase.Placed(KnifeCatalogue.All.First(design => design.ToDrawn().Handle is not null));
        PlanReport plan = Planning.Run(
            PassCase.PlacementOf(knife.Knife),
            new PlanSettings { TipDepth = new LengthWindow(30, 31) }
        );

        Assert.Contains(plan.Obstacles, obstacle => obstacle.Constraint == PlanConstraint.TipDepth);
    }

    [Fact]
    public void A_depth_of_the_tip_needs_a_handle()
    {
        Knife knife = new PassCase(KnifeCatalogue.Wagtail).Knife with { Handle = null };
        ArgumentException problem = Assert.Throws<ArgumentException>(() =>
            Planning.Run(PassCase.PlacementOf(knife), new PlanSettings { TipDepth = new LengthWindow(0.5, 2) })
        );
        Assert.Contains("handle", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pass_that_would_take_metal_that_has_to_stay_is_named()
    {
        PassCase knife = new(KnifeCatalogue.Wagtail);
        PlanReport plan = Planning.Run(
            PassCase.PlacementOf(knife.Knife),
            new PlanSettings
            {
                Targets = new StopTargets(
                    new StopTarget(0, 0.05),
                    new StopTarget(knife.LiftMm(Stop.HalfStop), 0.05),
                    new StopTarget(-2.5, 0.05)
                ),
            }
        );

        PlanObstacle obstacle = Assert.Single(plan.Obstacles);
        Assert.Equal((PlanConstraint.Metal, Stop.Closed), (obstacle.Constraint, obstacle.Stop));
    }

    private static bool IsLow(StopReading reading) =>
        reading.Stop != Stop.Open
        && reading.Rests
        && reading.LiftMm < _flatStays.AimMm(reading.Stop) - _flatStays.Targets.For(reading.Stop).ToleranceMm;

    private static double Reading(PlanReport plan, Stop stop) => plan.Simulation.End.Readings.At(stop)!.LiftMm;
}
