using System.Globalization;
using Flushback.Mechanism.Handle;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

public sealed class HandleCurveCsvTests
{
    [Theory]
    [MemberData(nameof(Cases.HandleNames), MemberType = typeof(Cases))]
    public void The_curve_is_the_one_kept(string name) =>
        GoldenFile.Matches($"{name}.csv", HandleCurveCsv.Write(Cases.Handle(name)!));

    [Fact]
    public void Every_line_ends_in_carriage_return_and_line_feed_and_has_as_many_fields_as_the_head()
    {
        // RFC 4180, section 2, points 1, 3 and 4.
        string csv = HandleCurveCsv.Write(SampleHandles.Sound());

        Assert.EndsWith("\r\n", csv, StringComparison.Ordinal);
        string[] lines = csv[..^2].Split("\r\n");
        Assert.All(lines, line => Assert.Equal(11, line.Split(',').Length));
        Assert.DoesNotContain('\n', string.Concat(lines));
    }

    [Fact]
    public void Numbers_read_back_as_the_samples_they_came_from()
    {
        HandleReport report = SampleHandles.Sound();
        string[] lines = HandleCurveCsv.Write(report).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);

        Assert.Equal(report.Curve.Length + 1, lines.Length);
        Assert.All(
            lines.Skip(1).Zip(report.Curve),
            pair =>
            {
                double[] read = [.. pair.First.Split(',').Select(Read)];
                HandleSample sample = pair.Second;
                double[] written =
                [
                    sample.BladeAngle.Degrees,
                    sample.BenchLiftMm,
                    sample.BenchLiftMm / 0.0254,
                    sample.LiftMm,
                    sample.LiftMm / 0.0254,
                    sample.ForceN,
                    sample.TorqueNmm,
                    sample.ClosingTorqueNmm,
                    sample.OpeningTorqueNmm,
                    sample.EnergyNmm,
                    sample.PeakStressMpa,
                ];
                Assert.All(written.Zip(read), both => Assert.Equal(both.First, both.Second, 6));
            }
        );
    }

    private static double Read(string field) => double.Parse(field, NumberStyles.Float, CultureInfo.InvariantCulture);
}
