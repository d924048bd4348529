using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Tolerances;

namespace Flushback.Tolerances.Tests;

/// <summary>Pull and peak stress of parts in the handle.</summary>
public class HandleTests
{
    private static readonly ToleranceSettings _inHandle = Studied.Everything with
    {
        DepthMm = 0.03,
        WidthMm = 0.03,
        PreloadMm = 0.05,
        Parts = 120,
        Handle = new HandleSettings { WidthMm = 3.2 },
    };

    [Fact]
    public void Pull_and_stress_answer_to_width_and_preload_as_the_check_in_the_handle_says()
    {
        ToleranceStudy study = Studied.Begin(KnifeCatalogue.Wagtail, _inHandle);
        BenchReport bench = BenchCheck.Run(Studied.Placed(KnifeCatalogue.Wagtail), new BenchSettings());
        (HandleReport? report, _) = HandleCheck.Run(bench, _inHandle.Handle!);
        (ToleranceKind, Mechanism.Handle.Dimension)[] pairs =
        [
            (ToleranceKind.SpringWidth, Mechanism.Handle.Dimension.SpringWidth),
            (ToleranceKind.SpringDepth, Mechanism.Handle.Dimension.SpringDepth),
            (ToleranceKind.Preload, Mechanism.Handle.Dimension.Preload),
        ];
        foreach ((ToleranceKind kind, Mechanism.Handle.Dimension dimension) in pairs)
        {
            int index = study.IndexOf(kind, Deviation.Amount);
            Sensitivity told = report!.Sensitivities.Single(sensitivity => sensitivity.Of == dimension);

            // Other steps of the difference: a percent of what a millimetre of depth does.
            Assert.Equal(told.PullNPerMm, study.Of(Outcome.Pull).PerMm[index], 0.09);
            Assert.Equal(told.StressMpaPerMm, study.Of(Outcome.PeakStress).PerMm[index], 3.7);
        }
    }

    [Fact]
    public void A_lower_rear_pin_is_as_much_more_preload_less_as_its_lever_says()
    {
        // The spring turns about the centre pin: a rear pin lower by d raises the free nose over the pivot by d times arm / span.
        ToleranceStudy study = Studied.Begin(KnifeCatalogue.Wagtail, _inHandle);
        Mechanism.Knives.Knife knife = study.Placement.Knife;
        double arm = -knife.CentrePin.Centre.X;
        double span = knife.CentrePin.Centre.X - knife.RearPin!.Value.Centre.X;
        double preload = study.Of(Outcome.Pull).PerMm[study.IndexOf(ToleranceKind.Preload, Deviation.Amount)];
        double rearUp = study.Of(Outcome.Pull).PerMm[study.IndexOf(ToleranceKind.RearPinPlace, Deviation.Up)];

        Assert.Equal(preload * arm / span, rearUp, 0.02 * preload);
    }

    [Fact]
    public void Parts_really_bent_pull_nearly_what_the_derivatives_say()
    {
        ToleranceReport report = Studied.Run(KnifeCatalogue.Wagtail, _inHandle);
        BentComparison bent = report.Bent!.Value;
        Spread pull = report.SpreadOf(Outcome.Pull)!;

        Assert.Equal(ToleranceStudy.PartsBent, bent.Count);
        Assert.Equal(0, bent.Stuck);
        Assert.InRange(bent.PullDifferenceN, 0, pull.Deviation);
        Assert.InRange(pull.Deviation, 0.05, 3);
    }

    [Fact]
    public void Parts_whose_pins_lie_beside_the_spring_are_counted_as_stuck()
    {
        ToleranceReport report = Studied.Run(
            KnifeCatalogue.Wagtail,
            _inHandle with
            {
                PinsMm = 10,
                WidthMm = 3.3,
                DepthMm = 4,
            }
        );

        Assert.InRange(report.Bent!.Value.Stuck, 1, ToleranceStudy.PartsBent);
        Assert.True(report.Counts.NotAssembled < report.Counts.All);
    }

    [Fact]
    public void A_knife_without_a_rear_pin_can_not_be_studied_in_the_handle()
    {
        (ToleranceReport? report, var problems) = ToleranceStudy.Run(
            Studied.Placed(KnifeCatalogue.Wagtail.ToKnife() with { RearPin = null }),
            _inHandle
        );

        Assert.Null(report);
        Assert.NotEmpty(problems);
    }
}
