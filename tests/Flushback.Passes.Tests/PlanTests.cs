using Flushback.Catalogue.Designs;
using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>Plans of knives that read high: they land on their targets, and nothing of them can be left out.</summary>
public sealed class PlanTests
{
    // Two ten-thousandths of an inch: what a good dial tells.
    private const double DialMm = 0.0002 * 25.4;

    private const double SettledMm = 5e-6;
    private const double SettledRad = 1e-6;

    private static readonly PlanSettings _settings = new();

    /// <summary>Random knives that read high: every stop but open above its window, and open where it may rest.</summary>
    internal static IEnumerable<int> HighSeeds(int count) =>
        Enumerable
            .Range(1, int.MaxValue)
            .Where(seed => ReadsHigh(new PassCase(KnifeGenerator.FromSeed(seed)).Readings))
            .Take(count);

    /// <remarks>
    /// All of this ran once on 200 knives. What is open: on seeds 121 and 768 another tilt of the half-stop slice takes a
    /// little less metal, though the plan lands. Here a few, to notice that something broke, and 790, which lost its rest.
    /// </remarks>
    public static TheoryData<int> Few() => [.. HighSeeds(6), 790];

    /// <remarks>Plans are quick, the referee is not.</remarks>
    public static TheoryData<int> More() => [.. HighSeeds(12)];

    [Theory]
    [MemberData(nameof(Few))]
    public void A_plan_lands_on_every_target_by_the_referee(int seed)
    {
        PlanReport plan = PlanOf(seed);
        Assert.True(plan.ReachesTargets, string.Join(' ', plan.Obstacles.Select(obstacle => obstacle.Sentence)));
        SimulationStep end = plan.Simulation.End;
        Knife knife = end.Placement.Knife;
        BruteForceBench bench = BruteForceBench.For(knife);
        BenchPose open = bench.OpenRest() ?? bench.PoseAt(end.Readings.Stops[0].RestAngle);
        foreach (StopReading reading in end.Readings.Stops.Skip(1))
        {
            Angle margin = Angle.FromDegrees(0.5);
            BenchPose rest = bench.RestBetween(reading.RestAngle - margin, reading.RestAngle + margin);
            Assert.Equal(_settings.AimMm(reading.Stop), bench.LiftMm(open.SpringRotation, rest.SpringRotation), DialMm);
            Assert.InRange(
                Math.Abs((rest.BladeAngle - reading.NominalAngle).Degrees),
                0,
                _settings.RestAngleTolerance.Degrees + 1e-3
            );
        }
    }

    [Theory]
    [MemberData(nameof(More))]
    public void A_plan_takes_metal_off_and_adds_none(int seed)
    {
        foreach (SimulationStep step in PlanOf(seed).Simulation.Steps)
        {
            Assert.True(step.Removed!.AreaMm2 > 0);
        }
    }

    [Theory]
    [MemberData(nameof(More))]
    public void No_pass_of_a_plan_can_be_dropped_or_shrunk_by_a_twentieth(int seed)
    {
        PlanReport plan = PlanOf(seed);
        Pass[] passes = [.. plan.Simulation.Steps.Select(step => step.Pass!)];
        Assert.False(MissesTarget(plan, passes));
        for (int i = 0; i < passes.Length; i++)
        {
            // Without its round a corner misses the radius wanted, whatever the dial reads.
            if (passes[i] is FlatSlice slice)
            {
                Pass smaller = slice with
                {
                    FrontDepthMm = 0.95 * slice.FrontDepthMm,
                    RearDepthMm = 0.95 * slice.RearDepthMm,
                };
                Assert.True(MissesTarget(plan, [.. passes[..i], .. passes[(i + 1)..]]), $"{slice} can be left out");
                Assert.True(MissesTarget(plan, [.. passes[..i], smaller, .. passes[(i + 1)..]]), $"{slice} can shrink");
            }
            else
            {
                Assert.Equal(_settings.LeastCornerRadiusMm, Assert.IsType<RoundCorner>(passes[i]).RadiusMm);
            }
        }
    }

    [Theory]
    [MemberData(nameof(More))]
    public void At_a_plan_metal_reading_and_bounds_are_in_balance(int seed)
    {
        PlanOptimum optimum = PlanOf(seed).Optimum!;
        Assert.NotEmpty(optimum.Faces);
        foreach (FaceOptimum face in optimum.Faces)
        {
            Assert.True(face.ReadingMultiplier >= 0, $"{face}");
            Assert.True(face.HeldMultiplier >= 0, $"{face}");

            // Where contacts change the gradient jumps and none vanishes; tilting either way has to tell there.
            Assert.InRange(face.ResidualMm2PerMm, 0, face.Held == TiltHeld.ByContacts ? double.MaxValue : 1e-3);
        }
    }

    /// <remarks>
    /// The slice is tilted a little either way and set to its target again, by trial. What the tilt did to the other stop
    /// through the zero is paid for at that stop's multiplier.
    /// </remarks>
    [Theory]
    [MemberData(nameof(More))]
    public void Tilting_a_slice_of_a_plan_either_way_takes_more_metal_or_leaves_a_window(int seed)
    {
        PlanReport plan = PlanOf(seed);
        Pass[] passes = [.. plan.Simulation.Steps.Select(step => step.Pass!)];
        for (int i = 0; i < passes.Length; i++)
        {
            if (
                passes[i] is not FlatSlice slice
                || passes.Count(pass => pass is FlatSlice s && s.Face == slice.Face) > 1
            )
            {
                continue;
            }

            Stop stop = slice.Face == PassCase.ClosedFace ? Stop.Closed : Stop.HalfStop;
            foreach (double tilt in new[] { -0.004, 0.004 })
            {
                Simulation? tilted = Restored(plan, passes, i, slice.FrontDepthMm + tilt, stop);
                Assert.True(
                    tilted is null
                        || !InWindows(plan, tilted)
                        || tilted.Steps.Sum(step => step.Removed!.AreaMm2) + PaidAtOther(plan, tilted, stop)
                            > plan.RemovedMm2 - 1e-6,
                    $"A tilt of {tilt} mm on the {slice.Face.Name} saves metal"
                );
            }
        }
    }

    [Fact]
    public void A_narrower_window_for_the_rest_angle_takes_more_metal()
    {
        foreach (int seed in HighSeeds(5))
        {
            PlanReport wide = PlanOf(seed);
            PlanReport narrow = PlanOf(seed, _settings with { RestAngleTolerance = Angle.FromDegrees(0.2) });
            Assert.True(narrow.RemovedMm2 > wide.RemovedMm2 - 1e-6);
        }
    }

    [Fact]
    public void Stock_kept_for_fitting_reads_above_the_target_by_as_much()
    {
        foreach (int seed in HighSeeds(5))
        {
            PlanReport plan = PlanOf(seed, _settings with { Targets = StopTargets.Finished, StockKeptMm = 0.05 });
            Assert.True(plan.ReachesTargets);
            Assert.All(
                plan.Simulation.End.Readings.Stops.Skip(1),
                reading => Assert.Equal(0.05, reading.LiftMm, SettledMm)
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

    [Fact]
    public void The_open_flat_comes_first_then_the_closed_face_then_the_half_stop()
    {
        foreach (int seed in Enumerable.Range(1, 40))
        {
            BladeFace[] sliced =
            [
                .. PlanOf(seed)
                    .Simulation.Steps.Select(step => step.Pass)
                    .OfType<FlatSlice>()
                    .Select(slice => slice.Face.Blade!.Value)
                    .Distinct(),
            ];
            BladeFace[] order = [BladeFace.OpenFlat, BladeFace.ClosedFace, BladeFace.HalfStopFace];
            Assert.Equal(order.Where(sliced.Contains), sliced);
        }
    }

    internal static PlanReport PlanOf(int seed, PlanSettings? settings = null) =>
        Planning.Run(PassCase.PlacementOf(new PassCase(KnifeGenerator.FromSeed(seed)).Knife), settings ?? _settings);

    private static bool ReadsHigh(StopReadings readings) =>
        Math.Abs(readings.Stops[0].RestAngle.Radians) < _settings.OpenAngleTolerance.Radians
        && readings
            .Stops.Skip(1)
            .All(stop =>
                stop.Rests && stop.LiftMm > _settings.AimMm(stop.Stop) + _settings.Targets.For(stop.Stop).ToleranceMm
            );

    private static Simulation? Simulated(PlanReport plan, IReadOnlyList<Pass> passes) =>
        Simulation
            .Run(plan.Simulation.Start.Placement, passes, new SimulationSettings { JudgesFindings = false })
            .Simulation;

    private static bool MissesTarget(PlanReport plan, IReadOnlyList<Pass> passes) =>
        Simulated(plan, passes) is not { } simulation
        || !InWindows(plan, simulation)
        || simulation.End.Readings.Stops.Any(reading =>
            Math.Abs(reading.LiftMm - plan.Simulation.End.Readings.At(reading.Stop)!.LiftMm) > SettledMm
        );

    private static bool InWindows(PlanReport plan, Simulation simulation) =>
        simulation
            .End.Readings.Stops.Skip(1)
            .All(reading =>
                Math.Abs((reading.RestAngle - reading.NominalAngle).Radians)
                < plan.Settings.RestAngleTolerance.Radians + SettledRad
            );

    private static double PaidAtOther(PlanReport plan, Simulation tilted, Stop stop) =>
        plan.Optimum!.Faces.Where(face => face.Stop != stop)
            .Sum(face =>
                face.ReadingMultiplier
                * (tilted.End.Readings.At(face.Stop)!.LiftMm - plan.Simulation.End.Readings.At(face.Stop)!.LiftMm)
            );

    /// <summary>The passes with another front depth in one of them and the rear depth that brings the stop to its target.</summary>
    private static Simulation? Restored(PlanReport plan, Pass[] passes, int index, double frontMm, Stop stop)
    {
        FlatSlice slice = (FlatSlice)passes[index];
        double wanted = plan.Simulation.End.Readings.At(stop)!.LiftMm;
        (double before, double beforeOff) = (double.NaN, double.NaN);
        double rear = slice.RearDepthMm;
        for (int i = 0; i < 12 && frontMm >= 0 && rear >= 0; i++)
        {
            Pass tilted = slice with { FrontDepthMm = frontMm, RearDepthMm = rear };
            if (Simulated(plan, [.. passes[..index], tilted, .. passes[(index + 1)..]]) is not { } simulation)
            {
                return null;
            }

            double off = simulation.End.Readings.At(stop)!.LiftMm - wanted;
            if (Math.Abs(off) < 1e-8)
            {
                return simulation;
            }

            double slope = double.IsNaN(before) ? -0.5 : (off - beforeOff) / (rear - before);
            (before, beforeOff) = (rear, off);
            rear -= off / slope;
        }

        return null;
    }
}
