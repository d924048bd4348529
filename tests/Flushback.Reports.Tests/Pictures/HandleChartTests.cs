using System.Globalization;
using System.Xml.Linq;
using Flushback.Mechanism.Handle;
using Flushback.Reports.Pictures;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests.Pictures;

public sealed class HandleChartTests
{
    /// <summary>A chart, the name of its upright axis and of its lower one, and of each curve.</summary>
    public static TheoryData<HandleCurve, string, string, string[]> Charts =>
        new()
        {
            { HandleCurve.Lift, "Lift, mm", "blade angle", ["in the handle", "on the bench"] },
            { HandleCurve.Torque, "Torque of the hand, N mm", "blade angle", ["closing", "opening", "no friction"] },
            { HandleCurve.Energy, "Strain energy of the spring, N mm", "blade angle", ["without friction"] },
            { HandleCurve.Stress, "Bending stress, MPa", "mm behind the pivot", ["open"] },
        };

    [Theory]
    [MemberData(nameof(Charts))]
    public void Each_chart_names_its_axes_and_its_curves(
        HandleCurve curve,
        string upright,
        string lower,
        string[] curves
    )
    {
        string[] words = Words(HandleChart.Draw(SampleHandles.Sound(), curve));

        Assert.Contains(upright, words);
        Assert.Contains(lower, words);
        Assert.All(curves, name => Assert.Contains(name, words));
    }

    [Fact]
    public void The_lift_has_thou_on_the_right_and_a_dot_at_every_stop()
    {
        XElement chart = HandleChart.Draw(SampleHandles.Sound(), HandleCurve.Lift);

        Assert.Contains("thou", Words(chart));
        Assert.Equal(3, Classed(chart, "fb-stop").Count());
    }

    [Fact]
    public void The_curve_without_friction_lies_between_closing_and_opening()
    {
        XElement chart = HandleChart.Draw(SampleHandles.Sound(), HandleCurve.Torque);
        double[] closing = Heights(chart, "fb-curve");
        double[] opening = Heights(chart, "fb-second");
        double[] between = Heights(chart, "fb-third");

        // Down the page the numbers grow; two decimals are written.
        Assert.All(closing.Zip(between), pair => Assert.True(pair.First <= pair.Second + 0.01));
        Assert.All(between.Zip(opening), pair => Assert.True(pair.First <= pair.Second + 0.01));
    }

    [Fact]
    public void The_stress_is_highest_at_the_mark_of_the_centre_pin()
    {
        XElement chart = HandleChart.Draw(SampleHandles.Sound(), HandleCurve.Stress);
        string[] points = Points(chart, "fb-curve");
        string top = points.MinBy(point => Read(point.Split(' ')[1]))!;
        string pin = Classed(chart, "fb-hair").Last().Attribute("x1")!.Value;

        Assert.Equal(pin, top.Split(' ')[0]);
        Assert.Contains("centre pin", Words(chart));
    }

    [Theory]
    [InlineData(HandleCurve.Lift)]
    [InlineData(HandleCurve.Torque)]
    [InlineData(HandleCurve.Energy)]
    public void Curves_without_any_height_can_still_be_drawn(HandleCurve curve)
    {
        HandleReport report = SampleHandles.Sound();
        HandleReport flat = report with
        {
            Curve = [.. report.Curve.Select(sample => new HandleSample(sample.BladeAngle, 0, 0, 0, 0, 0, 0, 0, 0))],
            Stops = [.. report.Stops.Select(stop => stop with { LiftMm = 0 })],
        };

        string chart = HandleChart.Draw(flat, curve).ToString();

        Assert.DoesNotContain("NaN", chart, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", chart, StringComparison.Ordinal);
    }

    private static IEnumerable<XElement> Classed(XElement picture, string cssClass) =>
        picture.Elements().Where(element => element.Attribute("class")?.Value == cssClass);

    private static string[] Words(XElement picture) =>
        [.. picture.Elements().Where(element => element.Name.LocalName == "text").Select(element => element.Value)];

    // The longest path of a class is the curve, the others are strokes of the legend.
    private static string[] Points(XElement chart, string cssClass) =>
        Classed(chart, cssClass).Select(path => path.Attribute("d")!.Value).MaxBy(data => data.Length)![1..].Split('L');

    private static double[] Heights(XElement chart, string cssClass) =>
        [.. Points(chart, cssClass).Select(point => Read(point.Split(' ')[1]))];

    private static double Read(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
