using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tests.Bench;

namespace Flushback.Mechanism.Tests.Findings;

/// <summary>Each finding appears on a knife made to have it, and not on a good one.</summary>
public sealed class FindingTests
{
    private static readonly KnifeDesign Good = KnifeCatalogue.Wagtail;

    [Fact]
    public void A_good_knife_has_no_findings() => Assert.Empty(BenchCase.Check(Good.ToDrawn()).Findings);

    [Fact]
    public void A_half_stop_face_left_high_reads_high_and_says_what_to_take_off()
    {
        Finding finding = Only(
            FindingCodes.ReadingHigh,
            Good with
            {
                Tang = Good.Tang with { HalfStopReadingMm = 0.4 },
            }
        );

        Assert.Equal(Stop.HalfStop, finding.Stop);
        Assert.Equal(0.4, finding.Value!.Value, 0.01);
        Assert.Equal(7 * 0.0254, finding.Limit!.Value, 1e-9);
        Assert.Equal("mm", finding.Unit);
        Assert.Contains("half-stop face", finding.Advice, StringComparison.Ordinal);
    }

    [Fact]
    public void A_closed_face_ground_too_far_reads_low() =>
        Assert.Equal(
            Stop.Closed,
            Only(FindingCodes.ReadingLow, Good with { Tang = Good.Tang with { ClosedReadingMm = 0.2 } }).Stop
        );

    [Fact]
    public void A_tilted_half_stop_face_rests_off_ninety()
    {
        Finding finding = Only(FindingCodes.RestAngleOff, Good with { Tang = Good.Tang with { HalfStopTiltDeg = 4 } });

        Assert.Equal(Stop.HalfStop, finding.Stop);
        Assert.Equal(-4, finding.Value!.Value, 0.5);
    }

    [Fact]
    public void A_round_tang_said_to_have_a_half_stop_does_not_rest_there()
    {
        DrawnKnife drawn = KnifeCatalogue.Dunlin.ToDrawn() with { HasHalfStop = true };

        Finding finding = Assert.Single(
            BenchCase.Check(drawn).Findings,
            finding => finding.Code == FindingCodes.NoRest
        );

        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Equal(Stop.HalfStop, finding.Stop);
    }

    [Fact]
    public void A_flat_on_a_flat_is_told_with_its_length()
    {
        Finding[] findings =
        [
            .. BenchCase
                .Check(KnifeCatalogue.Curlew.ToDrawn())
                .Findings.Where(finding => finding.Code == FindingCodes.FaceContact),
        ];

        Assert.Equal([Stop.Open, Stop.HalfStop, Stop.Closed], findings.Select(finding => finding.Stop!.Value));
        Assert.All(findings, finding => Assert.InRange(finding.Value!.Value, 7, 11));
    }

    [Fact]
    public void A_short_half_stop_face_has_its_contacts_too_close()
    {
        BenchSettings wide = new() { LeastContactSpreadMm = 9 };

        BenchReport report = BenchCase.Check(Good.ToDrawn(), wide);

        Assert.Contains(
            report.Findings,
            finding => finding.Code == FindingCodes.ContactsClose && finding.Stop == Stop.HalfStop
        );
    }

    [Fact]
    public void An_open_flat_that_touches_at_both_ends_besides_the_shoulder_has_three_contacts()
    {
        // Level hollow flat: both its ends touch, and the shoulder butts.
        KnifeDesign three = Good with
        {
            Tang = Good.Tang with { OpenTiltDeg = 0, OpenRelief = new Relief(0.06, 1) },
        };

        Finding finding = Only(FindingCodes.ManyContacts, three);

        Assert.Equal(3, finding.Value);
        Assert.Equal(Stop.Open, finding.Stop);
    }

    [Fact]
    public void A_narrow_blade_clears_and_a_wide_one_comes_too_near_the_spring()
    {
        BenchSettings strict = new() { LeastEdgeClearanceMm = 2.5 };

        Assert.Contains(
            BenchCase.Check(Good.ToDrawn(), strict).Findings,
            finding => finding.Code == FindingCodes.EdgeNearSpring && finding.Stop == Stop.Closed
        );
    }

    [Fact]
    public void A_tip_that_is_not_deep_enough_in_the_handle_is_told_with_its_depth()
    {
        BenchSettings strict = new() { LeastTipDepthMm = 3 };

        Finding finding = Assert.Single(
            BenchCase.Check(Good.ToDrawn(), strict).Findings,
            finding => finding.Code == FindingCodes.TipProud
        );

        Assert.InRange(finding.Value!.Value, 0.5, 3);
    }

    [Fact]
    public void Without_a_handle_the_tip_is_a_note_and_no_worse()
    {
        BenchReport report = BenchCase.Check(Good.ToDrawn() with { Handle = null });

        Finding finding = Assert.Single(report.Findings);
        Assert.Equal(FindingCodes.NoHandle, finding.Code);
        Assert.True(report.IsClean);
    }

    [Fact]
    public void Less_stock_on_the_front_of_the_back_than_behind_is_told()
    {
        DrawnKnife drawn = Good.ToDrawn();

        // The handle's upper line rises towards the front, so that less of the spring stands over it there.
        Box box = drawn.Handle!.Bounds;
        Outline wedge = Outline.FromVertices([
            new(box.MinX, box.MinY),
            new(box.MaxX, box.MinY),
            new(box.MaxX, 7.3),
            new(box.MinX, 6.4),
        ]);

        Finding finding = Assert.Single(
            BenchCase.Check(drawn with { Handle = wedge }).Findings,
            finding => finding.Code == FindingCodes.StockOrder
        );

        Assert.InRange(finding.Value!.Value, 0.3, 1);
    }

    [Fact]
    public void A_drawing_in_which_the_blade_cuts_into_the_spring_is_told_with_the_depth()
    {
        DrawnKnife drawn = Good.ToDrawn();
        Angle sunk = Angle.FromDegrees(-0.5);
        DrawnKnife overlapping = drawn with
        {
            Spring = drawn.Spring.Transformed(RigidMotion.RotationAbout(drawn.CentrePin.Centre, sunk)),
        };

        Finding finding = Assert.Single(
            BenchCase.Check(overlapping).Findings,
            finding => finding.Code == FindingCodes.DrawnOverlap
        );

        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.InRange(finding.Value!.Value, 0.15, 0.35);
    }

    private static Finding Only(string code, KnifeDesign design) =>
        Assert.Single(BenchCase.Check(design.ToDrawn()).Findings, finding => finding.Code == code);
}
