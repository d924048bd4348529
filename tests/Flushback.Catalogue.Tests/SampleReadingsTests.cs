using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Xunit;

namespace Flushback.Catalogue.Tests;

/// <summary>The readings promised in the samples' README, by the solver and by the referee.</summary>
public class SampleReadingsTests
{
    /// <summary>The README gives thousandths of an inch with one decimal.</summary>
    private const double HalfATenthOfAThouMm = 0.05 * 0.0254;

    /// <summary>Both flatten or read coordinates with twelve decimals; the referee's sagitta decides.</summary>
    private const double RefereeToleranceMm = 2e-6;

    [Theory]
    [InlineData("wagtail-half-stop.dxf", 5.0, 15.0)]
    [InlineData("dunlin-no-half-stop.dxf", null, 15.1)]
    [InlineData("sandpiper-relieved.dxf", 5.0, 15.0)]
    [InlineData("godwit-inch-closed-mirrored.dxf", 4.9, 14.9)]
    public void A_good_sample_reads_as_promised_by_solver_and_referee(string file, double? halfThou, double closedThou)
    {
        Placement placement = SampleKnife.Read(file);
        BenchReport report = BenchCheck.Run(placement, new BenchSettings());
        BruteForceBench referee = BruteForceBench.For(placement.Knife);
        Angle open = referee.OpenRest()!.Value.SpringRotation;

        Assert.True(report.IsClean, string.Join(' ', report.Findings.Select(finding => finding.Message)));
        Assert.Equal(halfThou is not null, report.HasHalfStop);
        foreach (StopReading reading in report.Stops.Skip(1))
        {
            double promised = (reading.Stop == Stop.HalfStop ? halfThou!.Value : closedThou) * 0.0254;
            Angle about = Angle.FromDegrees(4);
            BenchPose rest = referee.RestBetween(reading.NominalAngle - about, reading.NominalAngle + about);

            Assert.Equal(promised, reading.LiftMm, HalfATenthOfAThouMm);
            Assert.Equal(referee.LiftMm(open, rest.SpringRotation), reading.LiftMm, RefereeToleranceMm);
            Assert.Equal(rest.BladeAngle.Degrees, reading.RestAngle.Degrees, 1e-4);
            Assert.Equal(2, reading.Contacts.Length);
        }
    }

    [Fact]
    public void The_high_sample_reads_high_at_both_stops_and_has_nothing_else_wrong()
    {
        BenchReport report = BenchCheck.Run(SampleKnife.Read("whimbrel-reads-high.dxf"), new BenchSettings());

        Assert.Equal(9.8 * 0.0254, report.At(Stop.HalfStop)!.LiftMm, HalfATenthOfAThouMm);
        Assert.Equal(21.7 * 0.0254, report.At(Stop.Closed)!.LiftMm, HalfATenthOfAThouMm);
        Assert.Equal(["READING_HIGH", "READING_HIGH"], report.Findings.Select(finding => finding.Code));
    }

    [Fact]
    public void The_bad_sample_shows_many_kinds_of_findings()
    {
        BenchReport report = BenchCheck.Run(SampleKnife.Read("lapwing-reads-badly.dxf"), new BenchSettings());

        Assert.InRange(report.Findings.Select(finding => finding.Code).Distinct().Count(), 6, int.MaxValue);
        Assert.Equal(15.8 * 0.0254, report.At(Stop.HalfStop)!.LiftMm, HalfATenthOfAThouMm);
    }
}
