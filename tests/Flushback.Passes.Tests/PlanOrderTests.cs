using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>A plan comes in the order of the bench, with what the dial will read after each pass.</summary>
public sealed class PlanOrderTests
{
    private static readonly PlanReport[] _plans = [.. Enumerable.Range(1, 40).Select(seed => PlanTests.PlanOf(seed))];

    [Fact]
    public void The_open_flat_comes_first_then_the_closed_face_then_the_half_stop()
    {
        BladeFace[] order = [BladeFace.OpenFlat, BladeFace.ClosedFace, BladeFace.HalfStopFace];
        foreach (PlanReport plan in _plans)
        {
            BladeFace[] sliced = [.. Slices(plan).Select(slice => slice.Face.Blade!.Value).Distinct()];
            Assert.Equal(order.Where(sliced.Contains), sliced);
        }
    }

    /// <remarks>Rounding moves the zero, so it is done before what is read against it, unless a later cut would spoil the round.</remarks>
    [Fact]
    public void The_open_corner_is_rounded_before_the_closed_face_unless_the_half_stop_face_is_still_to_be_cut()
    {
        int seen = 0;
        foreach (PlanReport plan in _plans.Where(plan => Index(plan, PassCase.OpenCorner) >= 0))
        {
            int round = Index(plan, PassCase.OpenCorner);
            int halfStop = Index(plan, PassCase.HalfStopFace);
            int closed = Index(plan, PassCase.ClosedFace);
            Assert.True(halfStop >= 0 ? round > halfStop : closed < 0 || round < closed);
            seen += halfStop < 0 && closed >= 0 ? 1 : 0;
        }

        Assert.True(seen > 2, $"Only {seen} plans that show it.");
    }

    [Fact]
    public void No_slice_spoils_a_round_made_before_it()
    {
        foreach (PlanReport plan in _plans.Where(plan => plan.ReachesTargets))
        {
            SimulationStep end = plan.Simulation.End;
            foreach (RoundCorner round in plan.Simulation.Steps.Select(step => step.Pass).OfType<RoundCorner>())
            {
                Assert.Equal(
                    PassReasons.AddsMetal,
                    PassCut.Make(end.Placement.Knife, end.Readings, round, PassSettings.Default).Problem?.Reason
                );
            }
        }
    }

    /// <remarks>The tip is brought to its height by one end of the face, and only then is the face taken down level.</remarks>
    [Fact]
    public void A_blade_that_rests_wrong_closed_is_cut_by_one_end_first_and_then_level()
    {
        int seen = 0;
        foreach (PlanReport plan in _plans.Where(plan => plan.ReachesTargets))
        {
            FlatSlice[] closed = [.. Slices(plan).Where(slice => slice.Face == PassCase.ClosedFace)];
            StopReading start = plan.Simulation.Start.Readings.At(Stop.Closed)!;
            bool restsWrong =
                Math.Abs((start.RestAngle - start.NominalAngle).Radians) > plan.Settings.RestAngleTolerance.Radians;
            Assert.True(closed.Length <= (restsWrong ? 2 : 1));
            if (closed.Length == 2)
            {
                seen++;
                Assert.Equal(0, Math.Min(closed[0].FrontDepthMm, closed[0].RearDepthMm));
                Assert.Equal(closed[1].FrontDepthMm, closed[1].RearDepthMm, 0.01);
            }
        }

        Assert.True(seen > 2, $"Only {seen} plans that show it.");
    }

    [Fact]
    public void The_reading_after_each_pass_is_what_the_bench_reads_of_the_knife_so_far()
    {
        foreach (SimulationStep step in _plans.Take(8).SelectMany(plan => plan.Simulation.Steps))
        {
            StopReadings read = StopCheck.Run(step.Placement.Knife, new BenchSettings()).Readings;
            Assert.Equal(read.Stops.Select(stop => stop.LiftMm), step.Readings.Stops.Select(stop => stop.LiftMm));
        }
    }

    [Fact]
    public void The_nose_corner_is_rounded_when_it_carries_a_contact_and_only_then()
    {
        (int rounded, int left) = (0, 0);
        foreach (PlanReport plan in _plans.Where(plan => plan.ReachesTargets))
        {
            bool isRounded = Index(plan, PassCase.NoseCorner) >= 0;
            SimulationStep end = plan.Simulation.End;
            RoundCorner round = new(PassCase.NoseCorner, plan.Settings.LeastCornerRadiusMm);
            bool isSharp =
                PassCut.Make(end.Placement.Knife, end.Readings, round, PassSettings.Default).Result is not null;
            bool carries = end.Readings.Stops.Any(stop =>
                stop.Contacts.Any(contact => contact.SpringFace == SpringFace.NoseCorner)
            );
            Assert.False(carries && isSharp, "A sharp nose corner is left to carry.");
            rounded += isRounded ? 1 : 0;
            left += !isRounded && isSharp ? 1 : 0;
        }

        Assert.True(rounded > 1 && left > 2, $"{rounded} rounded, {left} left sharp.");
    }

    private static FlatSlice[] Slices(PlanReport plan) =>
        [.. plan.Simulation.Steps.Select(step => step.Pass).OfType<FlatSlice>()];

    private static int Index(PlanReport plan, Site site) =>
        plan.Simulation.Steps.ToList().FindIndex(step => step.Pass!.Site == site);
}
