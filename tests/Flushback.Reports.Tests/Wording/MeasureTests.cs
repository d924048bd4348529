using System.Globalization;
using CsCheck;
using Flushback.Geometry;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Tests.Wording;

public sealed class MeasureTests
{
    [Theory]
    [InlineData(0.127, "+5.0", "+0.127")]
    [InlineData(0.381, "+15.0", "+0.381")]
    [InlineData(-0.0254, "-1.0", "-0.025")]
    [InlineData(0, "+0.0", "+0.000")]
    [InlineData(-0.0004, "+0.0", "+0.000")]
    public void A_reading_has_its_sign_and_zero_is_never_minus(double mm, string thou, string millimetres)
    {
        // 1 in is 25.4 mm by definition (international inch).
        Assert.Equal(thou, Measure.Plain.SignedThou(mm));
        Assert.Equal(millimetres, Measure.Plain.SignedMm(mm));
    }

    [Fact]
    public void Print_has_its_own_minus_and_degree_sign()
    {
        Assert.Equal("\u22121.0 thou (\u22120.025 mm)", Measure.Typeset.Reading(-0.0254));
        Assert.Equal("-1.0 thou (-0.025 mm)", Measure.Plain.Reading(-0.0254));
        Assert.Equal("89.50\u00b0", Measure.Typeset.Degrees(Angle.FromDegrees(89.5)));
        Assert.Equal("89.50 deg", Measure.Plain.Degrees(Angle.FromDegrees(89.5)));
    }

    [Fact]
    public void A_length_is_told_in_millimetres_and_thousandths()
    {
        Assert.Equal("0.635 mm (25.0 thou)", Measure.Plain.Length(0.635));
        Assert.Equal("76.2 mm (3.000 in)", Measure.Plain.LongLength(76.2));
        Assert.Equal("76.2 x 25.4 mm (3.000 x 1.000 in)", Measure.Plain.Size(new Box(0, 0, 76.2, 25.4)));
    }

    [Fact]
    public void What_is_written_reads_back_to_half_of_its_last_digit() =>
        Gen.Double[-50, 50]
            .Sample(mm =>
                Math.Abs(Read(Measure.Plain.SignedMm(mm)) - mm) <= 0.0005000001
                && Math.Abs(Read(Measure.Plain.SignedThou(mm)) - (mm / 0.0254)) <= 0.0500001
            );

    private static double Read(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
