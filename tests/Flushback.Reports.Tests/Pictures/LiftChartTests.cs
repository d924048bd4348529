using System.Globalization;
using System.Xml.Linq;
using Flushback.Mechanism.Bench;
using Flushback.Reports.Pictures;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests.Pictures;

public sealed class LiftChartTests
{
    [Theory]
    [InlineData(ChartShape.Wide)]
    [InlineData(ChartShape.Narrow)]
    public void The_curve_has_a_point_for_every_sample_and_rises_as_they_do(ChartShape shape)
    {
        BenchReport report = SampleReports.InOrder();
        string data = Classed(LiftChart.Draw(report, shape), "fb-curve").Single().Attribute("d")!.Value;

        double[] heights = [.. data[1..].Split('L').Select(point => Read(point.Split(' ')[1]))];
        Assert.Equal(report.Curve.Samples.Length, heights.Length);

        // Up on the page is towards zero: the highest sample has the smallest y.
        int highest = report.Curve.Samples.IndexOf(report.Curve.Samples.MaxBy(sample => sample.LiftMm));
        Assert.Equal(heights.Min(), heights[highest]);
    }

    [Fact]
    public void Every_stop_has_its_window_and_its_rest()
    {
        XElement chart = LiftChart.Draw(SampleReports.ReadsBadly(), ChartShape.Wide);

        Assert.Equal(3, Classed(chart, "fb-window").Count());
        Assert.Equal(3, Classed(chart, "fb-stop").Count());
    }

    [Fact]
    public void A_rest_lies_inside_its_drawn_window_when_the_reading_does()
    {
        XElement chart = LiftChart.Draw(SampleReports.InOrder(), ChartShape.Wide);

        foreach ((XElement window, XElement rest) in Classed(chart, "fb-window").Zip(Classed(chart, "fb-stop")))
        {
            double top = Number(window, "y");
            Assert.InRange(Number(rest, "cy"), top, top + Number(window, "height"));
            double left = Number(window, "x");
            Assert.InRange(Number(rest, "cx"), left, left + Number(window, "width"));
        }
    }

    [Fact]
    public void Each_stretch_has_its_piece_of_the_strip_and_the_pieces_meet()
    {
        BenchReport report = SampleReports.InOrder();
        XElement[] pieces =
        [
            .. LiftChart
                .Draw(report, ChartShape.Wide)
                .Elements()
                .Where(element => element.Attribute("class")?.Value is "fb-strip" or "fb-strip-other"),
        ];

        Assert.Equal(report.Curve.Intervals.Length, pieces.Length);
        foreach ((XElement left, XElement right) in pieces.Zip(pieces.Skip(1)))
        {
            Assert.Equal(Number(left, "x") + Number(left, "width"), Number(right, "x"), 0.011);
        }
    }

    [Fact]
    public void A_curve_without_any_lift_can_still_be_drawn()
    {
        BenchReport report = SampleReports.InOrder();
        BenchReport flat = report with
        {
            Stops = [.. report.Stops.Select(stop => stop with { LiftMm = 0, Target = new StopTarget(0, 0) })],
            Peaks = [],
            Curve = new LiftCurve([.. report.Curve.Samples.Select(sample => sample with { LiftMm = 0 })], []),
        };

        string chart = LiftChart.Draw(flat, ChartShape.Wide).ToString();

        Assert.DoesNotContain("NaN", chart, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", chart, StringComparison.Ordinal);
        Assert.DoesNotContain("\u221e", chart, StringComparison.Ordinal);
    }

    private static IEnumerable<XElement> Classed(XElement picture, string cssClass) =>
        picture.Elements().Where(element => element.Attribute("class")?.Value == cssClass);

    private static double Number(XElement element, string attribute) => Read(element.Attribute(attribute)!.Value);

    private static double Read(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
