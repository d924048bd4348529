using System.Globalization;
using System.Text.RegularExpressions;
using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>Where the open blade rests: what a plan does about it, and what it says where it can do nothing.</summary>
public sealed partial class OpenRestTests
{
    // Two ten-thousandths of a degree.
    private const double SettledDeg = 2e-4;

    /// <remarks>
    /// Two contacts on the flat hold these; the rounds wanted would turn them out of their window. Metal off one contact turns
    /// the blade about the other (elementary), so one end alone is cut, and to the edge of the window.
    /// </remarks>
    [Theory]
    [InlineData(1311)]
    [InlineData(1758)]
    [InlineData(2153)]
    public void An_open_blade_that_rests_on_its_flat_is_turned_into_its_window_by_the_flat(int seed)
    {
        PlanReport plan = PlanTests.PlanOf(seed);

        Assert.True(plan.ReachesTargets);
        FlatSlice first = Assert.IsType<FlatSlice>(plan.Simulation.Steps[0].Pass);
        Assert.Equal(PassCase.OpenFlat, first.Face);
        Assert.Equal(0, Math.Min(first.FrontDepthMm, first.RearDepthMm));
        double open = Math.Abs(plan.Simulation.End.Readings.Stops[0].RestAngle.Degrees);
        Assert.Equal(plan.Settings.OpenAngleTolerance.Degrees, open, SettledDeg);
        FaceOptimum turned = Assert.Single(plan.Optimum!.Faces, face => face.Stop == Stop.Open);
        Assert.True(turned is { Held: TiltHeld.ByMostAngle, HeldMultiplier: > 0 });
    }

    [Fact]
    public void A_wider_window_leaves_the_open_flat_alone()
    {
        PlanReport plan = PlanTests.PlanOf(1311, new PlanSettings { OpenAngleTolerance = Angle.FromDegrees(2.5) });

        Assert.True(plan.ReachesTargets);
        Assert.DoesNotContain(plan.Simulation.Steps, step => step.Pass!.Site == PassCase.OpenFlat);
    }

    /// <remarks>The shoulder holds these: metal off lets them open further, and no pass brings them back (elementary).</remarks>
    [Theory]
    [InlineData(753)]
    [InlineData(2331)]
    public void Rounds_that_let_the_blade_open_too_far_are_named_with_a_radius_that_does_not(int seed)
    {
        PlanReport plan = PlanTests.PlanOf(seed);
        PlanObstacle obstacle = Assert.Single(plan.Obstacles);
        Assert.Equal((PlanConstraint.RestAngle, Stop.Open), (obstacle.Constraint, obstacle.Stop));
        double radius = obstacle.CornerRadiusMm!.Value;

        Assert.InRange(radius, 0.01, plan.Settings.LeastCornerRadiusMm);
        Assert.True(PlanTests.PlanOf(seed, new PlanSettings { LeastCornerRadiusMm = radius }).ReachesTargets);
        Assert.False(PlanTests.PlanOf(seed, new PlanSettings { LeastCornerRadiusMm = radius + 0.01 }).ReachesTargets);
    }

    [Fact]
    public void A_blade_that_the_shoulder_stops_too_early_opens_as_far_as_wanted_with_so_much_off_the_end_face()
    {
        PlanSettings narrow = new() { OpenAngleTolerance = Angle.FromDegrees(0.2), LeastCornerRadiusMm = 0 };
        int seen = 0;
        for (int seed = 1; seed < 40 && seen < 5; seed++)
        {
            KnifeDesign design = KnifeGenerator.FromSeed(seed);
            Knife knife = (design with { Blade = design.Blade with { ShoulderGapMm = -0.05 } }).ToKnife();
            PlanReport plan = Planning.Run(PassCase.PlacementOf(knife), narrow);
            string? sentence = plan
                .Obstacles.SelectMany(obstacle => obstacle.Remedies)
                .FirstOrDefault(remedy => remedy.Contains("end face, all along", StringComparison.Ordinal));
            if (sentence is null)
            {
                continue;
            }

            double off = double.Parse(Amount().Match(sentence).Groups[1].Value, CultureInfo.InvariantCulture);
            PassCase cut = new PassCase(plan.Simulation.End.Placement.Knife).After(
                PassCase.Slice(PassCase.EndFace, off, off)
            );
            Assert.Equal(0.2, cut.Readings.Stops[0].RestAngle.Degrees, 0.02);
            seen++;
        }

        Assert.True(seen > 2, $"Only {seen} such knives.");
    }

    [GeneratedRegex("([0-9.]+) mm")]
    private static partial Regex Amount();
}
