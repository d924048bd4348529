using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Tests.Bench;

/// <summary>Facts of the trade: common practice, no source.</summary>
public sealed class TradeFactTests
{
    [Fact]
    public void Targets_before_fitting_are_open_flush_half_stop_five_and_closed_fifteen_thousandths_of_an_inch()
    {
        // Common practice, no source.
        StopTargets targets = new BenchSettings().Targets;

        Assert.Equal(0, targets.Open.LiftMm);
        Assert.Equal(0.005 * 25.4, targets.HalfStop.LiftMm, 1e-12);
        Assert.Equal(0.015 * 25.4, targets.Closed.LiftMm, 1e-12);
    }

    [Fact]
    public void Targets_of_a_finished_pair_are_flush_at_all_three_stops()
    {
        // Common practice, no source.
        Assert.Equal(
            [0.0, 0, 0],
            new[] { StopTargets.Finished.Open, StopTargets.Finished.HalfStop, StopTargets.Finished.Closed }.Select(
                target => target.LiftMm
            )
        );
    }

    [Fact]
    public void An_undercut_of_seventy_degrees_leaves_the_corner_open_and_square_on_square_does_not()
    {
        // Common practice, no source.
        KnifeDesign undercut = new("undercut")
        {
            Blade = new BladeDesign { UndercutDeg = 70 },
            Tang = new TangDesign { OpenTiltDeg = 0 },
        };
        KnifeDesign square = undercut with
        {
            Spring = new SpringDesign { EndFaceDeg = 90 },
            Blade = new BladeDesign { UndercutDeg = 90 },
        };

        BenchReport open = BenchCase.Check(undercut.ToDrawn());
        BenchReport shut = BenchCase.Check(square.ToDrawn());

        Assert.InRange(open.CornerGap!.Value.GapMm, 0.3, 2);
        Assert.DoesNotContain(open.Findings, finding => finding.Code == FindingCodes.CornerTouching);
        Assert.Equal(0, shut.CornerGap!.Value.GapMm, 1e-9);
        Assert.Equal(
            [BladeFace.OpenFlat, BladeFace.Shoulder],
            shut.At(Stop.Open)!.Contacts.Where(contact => contact.LengthMm > 1).Select(contact => contact.BladeFace)
        );
        Assert.Contains(shut.Findings, finding => finding.Code == FindingCodes.CornerTouching);
    }
}
