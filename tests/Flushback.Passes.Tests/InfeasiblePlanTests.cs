using Flushback.Catalogue.Designs;
using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>Some fifty knives and wishes that removal cannot bring together: the plan says so and names what stops it.</summary>
/// <remarks>That they are infeasible, and by what, is settled each time from outside the planner, as each test says.</remarks>
public sealed class InfeasiblePlanTests
{
    private const int EachOf = 10;

    private static readonly PlanSettings _settings = new();

    /// <remarks>No pass but one on the open flat raises a reading (elementary: metal off lowers the lift or leaves it).</remarks>
    [Fact]
    public void A_stop_below_its_window_with_an_open_flat_that_must_stay_reads_low()
    {
        PlanSettings stays = _settings with { MostOffOpenFlatMm = 0, LeastCornerRadiusMm = 0 };
        AssertNamed(
            knife => knife.LiftMm(Stop.Closed) < 15 * StopTargets.MmPerThou - (3 * StopTargets.MmPerThou),
            _ => stays,
            PlanConstraint.ReadsLow,
            Stop.Closed
        );
    }

    /// <remarks>
    /// Where the shoulder holds the blade nothing but metal added there keeps it from opening so far (elementary); the referee
    /// tells the angle.
    /// </remarks>
    [Fact]
    public void A_blade_that_opens_too_far_rests_outside_its_window()
    {
        PlanSettings narrow = _settings with { OpenAngleTolerance = Angle.FromDegrees(0.2), LeastCornerRadiusMm = 0 };
        AssertNamed(
            knife =>
                knife
                    .Readings.Stops[0]
                    .Contacts.Any(contact =>
                        contact is { BladeFace: BladeFace.Shoulder, SpringFace: SpringFace.EndFace }
                    )
                && BruteForceBench.For(knife.Knife).OpenRest() is { } rest
                && rest.BladeAngle.Degrees < -0.5,
            _ => narrow,
            PlanConstraint.RestAngle,
            Stop.Open
        );
    }

    /// <remarks>The tip turns about the pivot alone (elementary): its depths at all angles of the window are looked at.</remarks>
    [Fact]
    public void A_depth_that_the_tip_has_at_no_closed_angle_is_out_of_reach()
    {
        static double Deepest(Knife knife) =>
            Enumerable.Range(-100, 201).Max(step => TipDepthMm(knife, 180 + (step * 0.01)));
        AssertNamed(
            _ => true,
            knife =>
                _settings with
                {
                    TipDepth = new LengthWindow(Deepest(knife.Knife) + 0.2, Deepest(knife.Knife) + 0.4),
                },
            PlanConstraint.TipDepth,
            Stop.Closed
        );
    }

    /// <remarks>
    /// No face may get shorter, and a half-stop face with sharp corners taken down shortens a face beside it (elementary);
    /// but the half stop reads high, and nothing but a cut of its face brings it down.
    /// </remarks>
    [Fact]
    public void A_face_that_may_not_shorten_the_one_beside_it_keeps_its_metal() =>
        AssertNamed(
            knife =>
                knife.Readings.HasHalfStop
                && !knife.Knife.BladeFaces.Any(face => face is BladeFace.OpenCorner or BladeFace.ClosedCorner)
                && knife.LiftMm(Stop.HalfStop)
                    > _settings.AimMm(Stop.HalfStop) + (2 * _settings.Targets.For(Stop.HalfStop).ToleranceMm),
            _ =>
                _settings with
                {
                    LeastCornerRadiusMm = 0,
                    MostOffOpenFlatMm = 0,
                    Simulation = new SimulationSettings
                    {
                        JudgesFindings = false,
                        Passes = PassSettings.Default with { LeastFaceMm = 100 },
                    },
                },
            PlanConstraint.Metal,
            stop: null
        );

    /// <remarks>The referee sees the lift fall all the way through the stop: there is no lowest place to rest in.</remarks>
    [Fact]
    public void A_blade_that_slides_through_a_stop_has_no_rest_there()
    {
        int seen = 0;
        foreach (int seed in Enumerable.Range(1, 12))
        {
            PassCase knife = new(Sliding(KnifeGenerator.FromSeed(seed)));
            if (knife.Readings.At(Stop.Closed)!.Rests)
            {
                continue;
            }

            BruteForceBench bench = BruteForceBench.For(knife.Knife);
            double[] lifts =
            [
                .. Enumerable
                    .Range(-2, 5)
                    .Select(step => bench.PoseAt(Angle.FromDegrees(180 + (step * 0.2))).SpringRotation.Radians),
            ];
            Assert.True(
                lifts.Zip(lifts.Skip(1)).All(pair => pair.Second < pair.First)
                    || lifts.Zip(lifts.Skip(1)).All(pair => pair.Second > pair.First)
            );
            PlanReport plan = Planning.Run(PassCase.PlacementOf(knife.Knife), _settings);
            Assert.Contains(
                plan.Obstacles,
                obstacle => obstacle.Constraint == PlanConstraint.NoRest && obstacle.Stop == Stop.Closed
            );
            seen++;
        }

        Assert.True(seen > 5, $"Only {seen} knives that slide through.");
    }

    [Fact]
    public void A_search_that_is_given_too_few_trials_says_that_it_came_to_no_end()
    {
        foreach (int seed in PlanClosure.HighSeeds().Take(5))
        {
            PlanReport plan = PlanTests.PlanOf(seed, _settings with { MostTrials = 1 });
            PlanObstacle obstacle = Assert.Single(plan.Obstacles);
            Assert.Equal(PlanConstraint.NotSettled, obstacle.Constraint);
            Assert.False(plan.ReachesTargets);
            Assert.Null(plan.Optimum);
            Assert.NotEmpty(plan.Simulation.Steps);
        }
    }

    /// <summary>A kick so short that the closed blade has nothing to stand on in front of the pivot's foot.</summary>
    private static KnifeDesign Sliding(KnifeDesign design) =>
        design with
        {
            Tang = design.Tang with { KickMm = -0.6, KickRadiusMm = 0, ClosedRelief = Relief.None },
        };

    private static double TipDepthMm(Knife knife, double angleDeg)
    {
        Point tip = knife.Blade.Vertices.MaxBy(vertex => vertex.Position.DistanceTo(Point.Origin)).Position;
        return knife.Handle!.SignedDistanceMm(Knife.BladeAt(Angle.FromDegrees(angleDeg)).Apply(tip));
    }

    private static void AssertNamed(
        Func<PassCase, bool> isInfeasible,
        Func<PassCase, PlanSettings> settings,
        PlanConstraint constraint,
        Stop? stop
    )
    {
        int seen = 0;
        for (int seed = 1; seen < EachOf && seed < 600; seed++)
        {
            PassCase knife = new(KnifeGenerator.FromSeed(seed));
            bool isSound =
                knife.Readings.Stops.All(reading => reading.Rests)
                && (
                    constraint == PlanConstraint.RestAngle || Math.Abs(knife.Readings.Stops[0].RestAngle.Degrees) < 1.5
                );
            if (!isSound || !isInfeasible(knife))
            {
                continue;
            }

            PlanReport plan = Planning.Run(PassCase.PlacementOf(knife.Knife), settings(knife));
            Assert.False(plan.ReachesTargets);
            Assert.True(
                plan.Obstacles.Any(obstacle =>
                    obstacle.Constraint == constraint && (stop is null || obstacle.Stop == stop)
                ),
                $"seed {seed}: {string.Join(' ', plan.Obstacles.Select(obstacle => $"{obstacle.Constraint} {obstacle.Sentence}"))}"
            );
            seen++;
        }

        Assert.True(seen == EachOf, $"Only {seen} such knives.");
    }
}
