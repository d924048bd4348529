using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;

namespace Flushback.Handle.Tests;

public class WholeKnifeTests
{
    [Fact]
    public void A_sound_knife_pulls_as_pocket_knives_do_at_a_stress_its_steel_stands()
    {
        HandleReport report = Placed.InTheHandle(SoundKnife.Design, SoundKnife.Settings);

        // Common practice, no source.
        Assert.InRange(report.Pull.PullN, 10, 45);
        Assert.Equal(SpringLife.Limited, report.Strength.Life);
        Assert.DoesNotContain(report.Findings, finding => finding.Severity != Severity.Note);
    }

    [Fact]
    public void A_spring_drilled_away_at_its_centre_pin_takes_a_set()
    {
        KnifeDesign shortAndDrilled = KnifeCatalogue.Wagtail with
        {
            PinRadiusMm = 1.2,
            Spring = new SpringDesign { CentrePin = new Point(-28, 5.4), RearPin = new Point(-62, 5.6) },
        };
        HandleReport report = Placed.InTheHandle(shortAndDrilled, SoundKnife.Settings);
        Assert.Equal(-28, report.Strength.AtXMm, 0.5);
        Assert.Contains(report.Findings, finding => finding.Code == FindingCodes.SpringTakesSet);
    }

    [Fact]
    public void Pull_is_linear_in_width_and_stress_does_not_depend_on_it()
    {
        HandleReport narrow = Placed.InTheHandle(SoundKnife.Design, SoundKnife.Settings);
        HandleReport wide = Placed.InTheHandle(SoundKnife.Design, SoundKnife.Settings with { WidthMm = 6.4 });
        Close.To(2 * narrow.Pull.PullN, wide.Pull.PullN, 1e-9);
        Close.To(narrow.Strength.PeakStressMpa, wide.Strength.PeakStressMpa, 1e-9);
        Close.To(
            narrow.Pull.PullN / 3.2,
            narrow.Sensitivities.Single(s => s.Of == Dimension.SpringWidth).PullNPerMm,
            1e-5
        );
    }

    [Fact]
    public void A_shift_of_the_rear_pin_is_a_preload_by_the_ratio_of_the_spans()
    {
        HandleReport report = Placed.InTheHandle(
            SoundKnife.Design,
            SoundKnife.Settings with
            {
                PreloadKind = PreloadKind.RearPinShift,
                PreloadMm = 0.36,
            }
        );
        Close.To(0.36 * 42 / 36, report.Spring.PreloadMm, 1e-9);
    }

    [Fact]
    public void A_spring_drawn_free_has_the_preload_it_is_drawn_with()
    {
        HandleReport given = Placed.InTheHandle(SoundKnife.Design, SoundKnife.Settings);
        DrawnKnife drawn = SoundKnife.Design.ToDrawn();
        Angle open = Placed.OnTheBench(SoundKnife.Design).At(Stop.Open)!.SpringRotation;
        Angle sunk = open - new Angle(Math.Asin(0.4 / 42));
        DrawnKnife free = drawn with
        {
            Spring = drawn.Spring.Transformed(RigidMotion.RotationAbout(drawn.CentrePin.Centre, sunk)),
            HandleAxis = Angle.Zero,
            DialPoint = new Point(0, 7 - 0.4),
        };
        (HandleReport? report, _) = HandleCheck.Run(
            Placed.OnTheBench(free),
            SoundKnife.Settings with
            {
                PreloadKind = PreloadKind.DrawnFree,
            }
        );
        Assert.Equal(given.Spring.PreloadMm, report!.Spring.PreloadMm, 2e-3);
        Assert.Equal(given.Pull.PullN, report.Pull.PullN, 0.05);
    }

    [Fact]
    public void Friction_makes_opening_and_closing_dearer()
    {
        HandleReport report = Placed.InTheHandle(SoundKnife.Design, SoundKnife.Settings);
        Assert.All(
            report.Curve,
            sample =>
            {
                Assert.True(sample.ClosingTorqueNmm > sample.TorqueNmm);
                Assert.True(sample.OpeningTorqueNmm > -sample.TorqueNmm);
            }
        );
        Assert.True(report.Pull.PullN > report.Pull.WithoutFrictionN);
    }

    [Fact]
    public void The_derivatives_foretell_what_a_little_more_preload_does()
    {
        HandleReport before = Placed.InTheHandle(SoundKnife.Design, SoundKnife.Settings);
        HandleReport after = Placed.InTheHandle(SoundKnife.Design, SoundKnife.Settings with { PreloadMm = 0.41 });
        Sensitivity preload = before.Sensitivities.Single(s => s.Of == Dimension.Preload);
        Assert.Equal(preload.StressMpaPerMm * 0.01, after.Strength.PeakStressMpa - before.Strength.PeakStressMpa, 0.05);
        Assert.Equal(preload.PullNPerMm * 0.01, after.Pull.PullN - before.Pull.PullN, 0.005);
    }

    [Fact]
    public void An_unusual_pair_of_hardnesses_is_a_finding() =>
        Assert.Contains(
            Placed.InTheHandle(SoundKnife.Design, SoundKnife.Settings with { SpringHardnessHrc = 52 }).Findings,
            finding => finding.Code == FindingCodes.HardnessPair
        );

    [Fact]
    public void The_lift_at_the_stops_is_told_beside_the_bench()
    {
        HandleReport report = Placed.InTheHandle(SoundKnife.Design, SoundKnife.Settings);
        Assert.Equal([Stop.Open, Stop.HalfStop, Stop.Closed], report.Stops.Select(stop => stop.Stop));
        Assert.Equal(0, report.Stops[0].LiftMm, 1e-12);
        Assert.All(report.Stops, stop => Assert.Equal(stop.BenchLiftMm, stop.LiftMm, 0.06));
    }
}
