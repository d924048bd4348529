using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Tolerances;
using Flushback.Mechanism.Tolerances.Chance;

namespace Flushback.Tolerances.Tests;

/// <summary>The law of propagation against published examples and against parts really solved.</summary>
public class PropagationTests
{
    // EURACHEM/CITAC Guide, Quantifying Uncertainty in Analytical Measurement, appendix E.1: not less than 7 and not more
    // than 10, anywhere between: 1.5 / sqrt(3) = 0.87.
    [Fact]
    public void Between_7_and_10_anywhere_has_a_standard_deviation_of_0_87() =>
        Assert.Equal(0.87, PropagationLaw.StandardDeviation(Distribution.Uniform, 1.5), 0.005);

    // JCGM 100:2008, 4.3.8, example: an expansion coefficient between 16.40 and 16.92 (in 1e-6 per kelvin), all values as
    // likely, has a standard uncertainty of 0.15 (from memory; the arithmetic is 0.52 / sqrt(12)).
    [Fact]
    public void Between_16_40_and_16_92_anywhere_has_a_standard_deviation_of_0_15() =>
        Assert.Equal(0.15, PropagationLaw.StandardDeviation(Distribution.Uniform, (16.92 - 16.40) / 2), 0.005);

    // NIST Technical Note 1297, table D.1, the comparison of end gauges of JCGM 100:2008, H.1, in nanometres: the standard 25,
    // their difference 5.8, 3.9 and 6.7, expansion 1.7, temperature of the bed 5.8 and 10.2, expansion coefficients 2.9,
    // temperatures 16.6; in all 34.
    [Fact]
    public void The_parts_of_the_comparison_of_end_gauges_come_to_34_nanometres()
    {
        double[] parts = [25, 5.8, 3.9, 6.7, 1.7, 5.8, 10.2, 2.9, 16.6];

        Assert.Equal(34, Math.Sqrt(PropagationLaw.Variance([1, 1, 1, 1, 1, 1, 1, 1, 1], parts)), 0.5);
    }

    // JCGM 101:2008, 9.2.3 and 9.2.2: the sum of four quantities of mean 0 and standard deviation 1 lies with 95 percent
    // within 3.88 where they are uniform, 3.92 where they are normal (from memory; the second is 2 times 1.96). Places of
    // pins are such quantities; 0.03 is five standard errors of the percentile.
    [Theory]
    [InlineData(Distribution.Uniform, 3.88)]
    [InlineData(Distribution.Normal, 3.92)]
    public void The_sum_of_four_like_quantities_lies_within_the_published_limits(
        Distribution distribution,
        double limit
    )
    {
        const int Parts = 100_000;
        double halfWidth = 1 / PropagationLaw.StandardDeviation(distribution, 1);
        ToleranceSettings settings = new() { PinsMm = halfWidth, Distribution = distribution };
        ToleranceList list = ToleranceList.For(KnifeCatalogue.Wagtail.ToKnife(), settings);
        PartChance chance = new(list, distribution, seed: 3);
        double[] deviations = new double[list.Dimensions.Length];
        double[] sums = new double[Parts];
        for (int part = 0; part < Parts; part++)
        {
            chance.Draw(part, deviations);
            sums[part] = deviations[..4].Sum();
        }

        Array.Sort(sums);
        Assert.Equal(-limit, sums[Parts / 40], 0.05);
        Assert.Equal(limit, sums[^(Parts / 40)], 0.05);
    }

    [Theory]
    [InlineData(Distribution.Uniform)]
    [InlineData(Distribution.Normal)]
    public void Parts_that_vary_little_are_spread_as_the_law_of_propagation_says(Distribution distribution)
    {
        // Open, Plover lies with a square shoulder flat on a square end face, and Curlew with the whole of a level open flat:
        // which end touches changes with every part, slopes to either side differ, and no law in first derivatives holds.
        foreach (KnifeDesign design in KnifeCatalogue.All.Except([KnifeCatalogue.Plover, KnifeCatalogue.Curlew]))
        {
            ToleranceReport report = Studied.Run(
                design,
                new ToleranceSettings
                {
                    PinsMm = 4e-4,
                    ProfileMm = 3e-4,
                    Distribution = distribution,
                    Parts = 2_000,
                }
            );
            foreach (Outcome outcome in Outcomes.Readings)
            {
                if (report.SpreadOf(outcome) is { } spread)
                {
                    // Four standard errors of a standard deviation, 1 / sqrt(2 n).
                    Assert.Equal(1, spread.Deviation / spread.LinearDeviation, 0.065);
                    Assert.Equal(spread.AsDrawn, spread.Mean, 4 * spread.LinearDeviation / Math.Sqrt(2_000));
                }
            }
        }
    }

    // R. G. Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in Medicine 17 (1998), table I,
    // method 3 (from memory; the formula is Wilson's).
    [Theory]
    [InlineData(81, 263, 0.2553, 0.3662)]
    [InlineData(15, 148, 0.0624, 0.1605)]
    [InlineData(0, 20, 0.0000, 0.1611)]
    [InlineData(1, 29, 0.0061, 0.1718)]
    public void A_counted_share_has_the_published_limits(int count, int of, double low, double high)
    {
        CountedShare share = CountedShare.Of(count, of);
        Assert.Equal((double)count / of, share.Share);
        Assert.Equal(low, share.Low, 0.00005);
        Assert.Equal(high, share.High, 0.00005);
    }
}
