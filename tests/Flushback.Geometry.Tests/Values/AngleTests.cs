using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Values;

public class AngleTests
{
    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(180, 180, 180)]
    [InlineData(-180, 180, 180)]
    [InlineData(190, -170, 190)]
    [InlineData(-90, -90, 270)]
    [InlineData(720, 0, 0)]
    [InlineData(-725, -5, 355)]
    public void A_direction_wraps_to_either_range(double degrees, double signed, double positive)
    {
        Angle angle = Angle.FromDegrees(degrees);
        Near.Equal(signed, angle.Signed.Degrees, 1e-12);
        Near.Equal(positive, angle.Positive.Degrees, 1e-12);
    }

    [Fact]
    public void A_hair_below_zero_wraps_to_less_than_a_full_turn()
    {
        double wrapped = new Angle(-1e-300).Positive.Radians;
        Assert.InRange(wrapped, 0, double.BitDecrement(Math.Tau));
    }

    [Fact]
    public void A_whole_turn_is_not_no_turn() => Assert.NotEqual(Angle.Zero, Angle.FromDegrees(360));
}
