using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Tests.Fixtures;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Tests.Wording;

public sealed class NamesTests
{
    [Fact]
    public void Every_face_has_a_name_of_its_own()
    {
        HasItsOwn(Enum.GetValues<BladeFace>().Select(FaceNames.Of));
        HasItsOwn(Enum.GetValues<SpringFace>().Select(FaceNames.Of));
        HasItsOwn(Enum.GetValues<Stop>().Select(StopNames.Of));
    }

    [Theory]
    [InlineData(0, 0, "In order: every reading lies in its window and nothing needs work.")]
    [InlineData(0, 1, "Needs work: 1 warning.")]
    [InlineData(2, 0, "Will not work as drawn: 2 faults.")]
    [InlineData(1, 3, "Will not work as drawn: 1 fault and 3 warnings.")]
    public void The_verdict_counts_what_needs_work(int faults, int warnings, string verdict)
    {
        BenchReport report = SampleReports.InOrder() with
        {
            Findings =
            [
                .. Enumerable.Repeat(Of(Severity.Fault), faults),
                .. Enumerable.Repeat(Of(Severity.Warning), warnings),
                Of(Severity.Note),
            ],
        };

        Assert.Equal(verdict, VerdictWords.Of(report));
    }

    [Fact]
    public void A_reading_outside_its_window_is_told_from_the_edge_of_the_window()
    {
        // Drawn for 12.0 thou where 3.0 to 7.0 are wanted, and for 11.5 where 13.0 to 17.0 are.
        BenchReport report = SampleReports.ReadsBadly();

        Assert.Equal("high by 5.0 thou", VerdictWords.Of(report.At(Stop.HalfStop)!, Measure.Plain));
        Assert.Equal("low by 1.5 thou", VerdictWords.Of(report.At(Stop.Closed)!, Measure.Plain));
    }

    [Fact]
    public void A_hair_outside_the_window_is_not_told_as_nothing()
    {
        StopReading reading = SampleReports.ReadsBadly().At(Stop.HalfStop)! with { LiftMm = 0.1778 + 0.0001 };

        Assert.Equal("high by less than 0.1 thou", VerdictWords.Of(reading, Measure.Plain));
    }

    private static Finding Of(Severity severity) => new("SOME_CODE", severity, "A matter.", "Do something.");

    private static void HasItsOwn(IEnumerable<string> names)
    {
        string[] all = [.. names];
        Assert.DoesNotContain("", all);
        Assert.Equal(all.Distinct(), all);
    }
}
