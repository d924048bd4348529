using Flushback.Mechanism.Materials;

namespace Flushback.Handle.Tests.Materials;

public class SteelTests
{
    [Theory]
    [InlineData("1095")]
    [InlineData("AISI 1095")]
    [InlineData("aisi-1095")]
    public void A_steel_is_found_however_its_designation_is_written(string designation) =>
        Assert.Equal("1095", Steels.Named(designation)?.Designation);

    [Fact]
    public void A_steel_nobody_knows_is_not_found() => Assert.Null(Steels.Named("unobtainium"));

    [Fact]
    public void Every_steel_has_a_modulus_between_190_and_216_GPa_and_says_where_from() =>
        Assert.All(
            Steels.All,
            steel =>
            {
                Assert.InRange(steel.ModulusMpa.Low, 190e3, steel.ModulusMpa.High);
                Assert.InRange(steel.ModulusMpa.High, steel.ModulusMpa.Low, 216e3);
                Assert.NotEmpty(steel.ModulusSource);
            }
        );

    [Fact]
    public void The_tables_disagree_by_4_percent_at_45_HRC_and_by_more_than_10_at_55()
    {
        // Read second-hand from the tables themselves: 1442, 1480, 1421 and 1979, 2075, 1875 MPa.
        ValueRange at45 = HardnessConversion.TensileMpa(45)!.Value;
        ValueRange at55 = HardnessConversion.TensileMpa(55)!.Value;
        Assert.Equal(new ValueRange(1421, 1480), at45);
        Assert.InRange((at45.High / at45.Low) - 1, 0.04, 0.042);
        Assert.InRange((at55.High / at55.Low) - 1, 0.10, 0.11);
    }

    /// <summary>Rows printed in the tables themselves: DIN 50150, and one named after ASTM E140 in thousands of psi.</summary>
    [Theory]
    [InlineData(40.8, 1290)]
    [InlineData(41.8, 1320)]
    [InlineData(43.6, 1385)]
    [InlineData(44.5, 1420)]
    [InlineData(45.3, 1455)]
    [InlineData(46.9, 1520)]
    [InlineData(42, 195 * 6.894757)]
    [InlineData(44, 208 * 6.894757)]
    [InlineData(47, 229 * 6.894757)]
    [InlineData(49, 246 * 6.894757)]
    [InlineData(51, 264 * 6.894757)]
    [InlineData(54, 292 * 6.894757)]
    public void Every_printed_strength_lies_within_the_range(double hardness, double tensile)
    {
        ValueRange range = HardnessConversion.TensileMpa(hardness)!.Value;

        // Between the rows kept the range runs straight: that is off by 2 MPa at most.
        Assert.InRange(tensile, range.Low - 2, range.High + 2);
    }

    [Theory]
    [InlineData(39.9)]
    [InlineData(55.1)]
    [InlineData(double.NaN)]
    public void Outside_the_tables_nothing_is_guessed(double hardness) =>
        Assert.Null(HardnessConversion.TensileMpa(hardness));

    [Fact]
    public void A_steel_of_ones_own_keeps_the_strength_given()
    {
        Steel own = new("strip", new ValueRange(204e3, 204e3), "its maker", new ValueRange(1500, 1600));
        Assert.Equal(new ValueRange(1500, 1600), own.TensileAt(12));
    }
}
