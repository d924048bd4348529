using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Handle.Tests;

public class BadInputTests
{
    private static readonly DrawnKnife _drawn = KnifeCatalogue.Wagtail.ToDrawn();

    [Fact]
    public void A_missing_rear_pin_is_asked_for() =>
        Assert.Equal("REAR_PIN_MISSING", Placed.Refused(_drawn with { RearPin = null }, new()).Reason);

    [Fact]
    public void A_rear_pin_between_centre_pin_and_nose_is_refused() =>
        Assert.Equal(
            "REAR_PIN_NOT_BEHIND",
            Placed.Refused(_drawn with { RearPin = new Circle(new Point(-8, 5.4), 1) }, new()).Reason
        );

    [Fact]
    public void A_rear_pin_outside_the_spring_is_refused()
    {
        (_, var problems) = KnifePlacement.Place(_drawn with { RearPin = new Circle(new Point(-82, 20), 1) });
        Assert.Equal(KnifeSubject.RearPin, Assert.Single(problems).Subject);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-2.4)]
    [InlineData(double.NaN)]
    public void A_width_that_is_none_is_refused(double width) =>
        Assert.Equal("WIDTH_NOT_POSITIVE", Placed.Refused(_drawn, new() { WidthMm = width }).Reason);

    [Fact]
    public void A_preload_below_zero_is_refused() =>
        Assert.Equal("PRELOAD_NEGATIVE", Placed.Refused(_drawn, new() { PreloadMm = -0.1 }).Reason);

    [Theory]
    [InlineData(8)]
    [InlineData(25)]
    public void A_preload_against_which_no_blade_turns_is_refused(double preload)
    {
        KnifeProblem problem = Placed.Refused(_drawn, new() { PreloadMm = preload });
        Assert.Equal("PRELOAD_TOO_LARGE", problem.Reason);
        Assert.Contains("can not be turned", problem.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_spring_thinner_than_its_holes_is_refused()
    {
        (_, var problems) = KnifePlacement.Place(_drawn with { CentrePin = new Circle(new Point(-42, 4.4), 2.7) });
        Assert.Contains(problems, problem => problem.Subject == KnifeSubject.CentrePin);
    }

    [Fact]
    public void A_stiff_nose_behind_the_centre_pin_is_refused() =>
        Assert.Equal("STIFF_NOSE_BEHIND_CENTRE_PIN", Placed.Refused(_drawn, new() { StiffNoseMm = 44 }).Reason);
}
