using System.Globalization;
using Flushback.Mechanism.Bench;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

public sealed class LiftCurveCsvTests
{
    [Theory]
    [MemberData(nameof(Cases.BenchNames), MemberType = typeof(Cases))]
    public void The_curve_is_the_one_kept(string name) =>
        GoldenFile.Matches($"{name}.csv", LiftCurveCsv.Write(Cases.Report(name)));

    [Fact]
    public void Every_line_ends_in_carriage_return_and_line_feed_and_has_as_many_fields_as_the_head()
    {
        // RFC 4180, section 2, points 1, 3 and 4.
        string csv = LiftCurveCsv.Write(SampleReports.InOrder());

        Assert.EndsWith("\r\n", csv, StringComparison.Ordinal);
        string[] lines = csv[..^2].Split("\r\n");
        Assert.All(lines, line => Assert.Equal(11, line.Split(',').Length));
        Assert.DoesNotContain('\n', string.Concat(lines));
        Assert.DoesNotContain('"', csv);
    }

    [Fact]
    public void Numbers_read_back_as_the_samples_they_came_from()
    {
        BenchReport report = SampleReports.InOrder();
        IEnumerable<string[]> rows = LiftCurveCsv
            .Write(report)
            .Split("\r\n", StringSplitOptions.RemoveEmptyEntries)
            .Skip(1)
            .Select(line => line.Split(','));

        Assert.All(
            rows.Zip(report.Curve.Samples),
            pair =>
            {
                double[] read = [.. pair.First.Where((_, column) => column is not (5 or 6)).Select(Read)];
                LiftSample sample = pair.Second;
                Assert.Equal(sample.BladeAngle.Degrees, read[0], 6);
                Assert.Equal(sample.LiftMm, read[1], 6);
                Assert.Equal(sample.LiftMm / 0.0254, read[2], 6);
                Assert.Equal(sample.SlopeMmPerRad * Math.PI / 180, read[3], 6);
                Assert.Equal(sample.SpringRotation.Degrees, read[4], 6);
                Assert.Equal(sample.TipDepthMm!.Value, read[8], 6);
            }
        );
    }

    [Fact]
    public void Without_a_handle_the_tip_depth_is_an_empty_field()
    {
        string[] lines = LiftCurveCsv.Write(SampleReports.WithoutHandle()).Split("\r\n");

        Assert.EndsWith(",", lines[1], StringComparison.Ordinal);
    }

    private static double Read(string field) => double.Parse(field, NumberStyles.Float, CultureInfo.InvariantCulture);
}
