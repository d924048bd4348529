using System.Globalization;
using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>Plans of knives that read high: they land on their targets, and nothing of them can be left out.</summary>
/// <remarks>
/// A build machine looks at a few. FLUSHBACK_PLANS=200 looks at as many, and FLUSHBACK_PLANS_SEED says from which seed on.
/// </remarks>
public sealed class PlanTests
{
    private static readonly PlanSettings _settings = new();

    /// <remarks>
    /// Of 121, 602, 768 and 1866 the least metal lies where contacts change; of 473 the reading jumps there. The open blade
    /// of 1311 and 1758 rests on the flat and has to be turned by it.
    /// </remarks>
    public static TheoryData<int> Seeds() =>
        Count is { } count
            ? [.. PlanClosure.HighSeeds(First).Take(count)]
            : [.. PlanClosure.HighSeeds().Take(10), 121, 473, 602, 768, 1311, 1758, 1866];

    /// <remarks>Plans are quick, the referee is not.</remarks>
    public static TheoryData<int> Few() => Count is null ? [.. PlanClosure.HighSeeds().Take(4), 790, 1311] : Seeds();

    private static int? Count => Number("FLUSHBACK_PLANS");

    private static int First => Number("FLUSHBACK_PLANS_SEED") ?? 1;

    [Theory]
    [MemberData(nameof(Few))]
    public void A_plan_lands_on_every_target_by_the_referee(int seed) => Assert.Empty(PlanClosure.Of(seed).OffTarget());

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_plan_takes_metal_off_and_adds_none(int seed) => Assert.Empty(PlanClosure.Of(seed).AddsMetal());

    [Theory]
    [MemberData(nameof(Seeds))]
    public void No_pass_of_a_plan_can_be_dropped_or_shrunk_by_a_twentieth(int seed) =>
        Assert.Empty(PlanClosure.Of(seed).Spare());

    [Theory]
    [MemberData(nameof(Seeds))]
    public void At_a_plan_metal_reading_and_bounds_are_in_balance(int seed) =>
        Assert.Empty(PlanClosure.Of(seed).OutOfBalance());

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Tilting_a_cut_of_a_plan_either_way_takes_more_metal_or_leaves_a_window(int seed) =>
        Assert.Empty(PlanClosure.Of(seed).Cheaper(-0.004, 0.004));

    /// <remarks>
    /// Rest and area are exact to first order: what differs from central differences over 0.02 micrometres a side is their
    /// rounding, and the curvature of rounds.
    /// </remarks>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_gradients_of_a_plan_are_those_of_the_knife_itself(int seed)
    {
        foreach ((Stop stop, string of, double model, double differences) in PlanGradient.At(PlanClosure.Of(seed).Plan))
        {
            Assert.True(
                Math.Abs(model - differences) < 2e-3 * Math.Max(1, Math.Abs(differences)),
                $"{stop}, {of}: {model} where the knife has {differences}"
            );
        }
    }

    [Fact]
    public void A_narrower_window_for_the_rest_angle_takes_more_metal()
    {
        foreach (int seed in PlanClosure.HighSeeds().Take(5))
        {
            PlanReport wide = PlanOf(seed);
            PlanReport narrow = PlanOf(seed, _settings with { RestAngleTolerance = Angle.FromDegrees(0.2) });
            Assert.True(narrow.RemovedMm2 > wide.RemovedMm2 - 1e-6);
        }
    }

    [Fact]
    public void Stock_kept_for_fitting_reads_above_the_target_by_as_much()
    {
        foreach (int seed in PlanClosure.HighSeeds().Take(5))
        {
            PlanReport plan = PlanOf(seed, _settings with { Targets = StopTargets.Finished, StockKeptMm = 0.05 });
            Assert.True(plan.ReachesTargets);
            Assert.All(
                plan.Simulation.End.Readings.Stops.Skip(1),
                reading => Assert.Equal(0.05, reading.LiftMm, PlanClosure.SettledMm)
            );
        }
    }

    [Fact]
    public void A_knife_inside_its_windows_needs_no_slice()
    {
        PassCase knife = new(KnifeCatalogue.Wagtail);
        PlanReport plan = Planning.Run(
            PassCase.PlacementOf(knife.Knife),
            _settings with
            {
                Targets = new StopTargets(
                    new StopTarget(0, 0.01),
                    new StopTarget(knife.LiftMm(Stop.HalfStop), 0.05),
                    new StopTarget(knife.LiftMm(Stop.Closed), 0.05)
                ),
                LeastCornerRadiusMm = 0,
            }
        );
        Assert.True(plan.ReachesTargets);
        Assert.Empty(plan.Simulation.Steps);
    }

    internal static PlanReport PlanOf(int seed, PlanSettings? settings = null) => PlanClosure.Of(seed, settings).Plan;

    private static int? Number(string name) =>
        Environment.GetEnvironmentVariable(name) is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : null;
}
