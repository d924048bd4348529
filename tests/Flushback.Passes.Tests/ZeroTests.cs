using CsCheck;
using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Passes;

namespace Flushback.Passes.Tests;

/// <summary>The zero of the dial, set again at open after every pass, and what that does to the other readings.</summary>
public sealed class ZeroTests
{
    private const double Thou = StopTargets.MmPerThou;

    [Fact]
    public void Rounding_a_straight_level_corner_loses_nothing_and_the_zero_stays()
    {
        Simulation simulation = new PassCase(KnifeCatalogue.Curlew).Simulate(new RoundCorner(PassCase.OpenCorner, 0.5));

        Assert.Equal(0, simulation.End.RawLiftsMm[0], 1e-9);
        Assert.Equal(Reading(simulation.Start, Stop.HalfStop), Reading(simulation.End, Stop.HalfStop), 1e-9);
    }

    [Fact]
    public void Rounding_the_corner_that_carries_the_open_spring_drops_the_zero_and_the_other_stops_read_high()
    {
        Simulation simulation = new PassCase(ReadsHigh).Simulate(new RoundCorner(PassCase.OpenCorner, 1));

        // Straight lands at the half-stop face lose nothing: what the dial shows more is the zero alone.
        Assert.True(simulation.End.RawLiftsMm[0] < -0.1);
        Assert.Equal(simulation.Start.RawLiftsMm[1], simulation.End.RawLiftsMm[1], 0.001);
        Assert.Equal(
            Reading(simulation.Start, Stop.HalfStop) - simulation.End.RawLiftsMm[0],
            Reading(simulation.End, Stop.HalfStop),
            0.002
        );
    }

    [Fact]
    public void Rounding_a_corner_that_carries_the_half_stop_more_than_the_open_spring_makes_it_read_low()
    {
        KnifeDesign design = KnifeCatalogue.Wagtail with
        {
            Tang = new TangDesign { OpenTiltDeg = 0, HalfStopRelief = new Relief(0.15) },
        };

        Simulation simulation = new PassCase(design).Simulate(new RoundCorner(PassCase.OpenCorner, 0.8));

        Assert.Equal(0, simulation.End.RawLiftsMm[0], 1e-6);
        Assert.True(Reading(simulation.End, Stop.HalfStop) < Reading(simulation.Start, Stop.HalfStop) - 0.01);
    }

    /// <remarks>
    /// Common practice, no source: a half stop that reads 0.005 in may read 0.010 to 0.025 in once the open corner is
    /// rounded and the dial is set to zero again.
    /// </remarks>
    [Fact]
    public void A_half_stop_of_five_thou_reads_ten_to_twenty_five_once_the_open_corner_is_rounded()
    {
        Simulation simulation = new PassCase(ReadsHigh).Simulate(new RoundCorner(PassCase.OpenCorner, 1));

        Assert.Equal(5, Reading(simulation.Start, Stop.HalfStop) / Thou, 0.1);
        Assert.InRange(Reading(simulation.End, Stop.HalfStop) / Thou, 10, 25);
    }

    [Fact]
    public void Rounding_the_shoulders_top_lets_the_blade_over_open()
    {
        // The end face leans back less than the shoulder does, so the shoulder's top butts on it.
        KnifeDesign design = KnifeCatalogue.Wagtail with
        {
            Blade = new BladeDesign { UndercutDeg = 74 },
        };

        Simulation simulation = new PassCase(design).Simulate(new RoundCorner(PassCase.Shoulder, 0.3));

        Assert.True(simulation.End.Readings.Stops[0].RestAngle < simulation.Start.Readings.Stops[0].RestAngle);
        Assert.True(simulation.End.RawLiftsMm[0] < 0);
    }

    /// <remarks>
    /// Taking metal off lowers the lift at every blade angle, or leaves it, and only adds angles that are possible. The
    /// blade rests where the lift is lowest about it, and a round moves that place a little at most (elementary).
    /// </remarks>
    [Fact]
    public void No_round_raises_the_zero() =>
        Gen.Select(KnifeGenerator.Designs, RandomPasses.Rounds)
            .Sample(
                (design, round) =>
                {
                    PassCase before = new(design);
                    if (before.Try(round).Result is { } result)
                    {
                        PassCase after = new(result.Knife);
                        double zero = before.Knife.LiftMm(before.Readings.OpenRotation, after.Readings.OpenRotation);
                        Assert.True(zero < 1e-8, $"{round} on {design.Name} raises the zero by {zero} mm");
                    }
                },
                iter: 300
            );

    /// <summary>
    /// The open flat rises to the rear and is hollow, so that the open corner alone carries the spring, on a slope of some
    /// seven degrees; the half-stop face has straight lands at both ends.
    /// </summary>
    internal static KnifeDesign ReadsHigh { get; } =
        new("Whimbrel")
        {
            Tang = new TangDesign
            {
                OpenTiltDeg = 4,
                OpenRelief = new Relief(0.1),
                HalfStopRelief = new Relief(0.05, 1.3),
            },
        };

    private static double Reading(SimulationStep step, Stop stop) => step.Readings.At(stop)!.LiftMm;
}
