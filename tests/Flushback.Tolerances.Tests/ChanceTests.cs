using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Tolerances;
using Flushback.Mechanism.Tolerances.Chance;

namespace Flushback.Tolerances.Tests;

/// <summary>The streams that parts draw from, and how they are spread.</summary>
public class ChanceTests
{
    private const int Parts = 40_000;

    // Known answers of the Random123 distribution (tests/kat_vectors), read in three public copies.
    [Theory]
    [InlineData(0u, 0u, 0u, 0u, 0u, 0u, 0x6627e8d5u, 0xe169c58du, 0xbc57ac4cu, 0x9b00dbd8u)]
    [InlineData(
        0xffffffffu,
        0xffffffffu,
        0xffffffffu,
        0xffffffffu,
        0xffffffffu,
        0xffffffffu,
        0x408f276du,
        0x41c83b0eu,
        0xa20bc7c6u,
        0x6d5451fdu
    )]
    public void The_generator_gives_its_authors_known_answers(
        uint a,
        uint b,
        uint c,
        uint d,
        uint firstKey,
        uint secondKey,
        uint first,
        uint second,
        uint third,
        uint fourth
    ) =>
        Assert.Equal(
            new PhiloxBlock(first, second, third, fourth),
            PhiloxBlock.Of(new PhiloxBlock(a, b, c, d), firstKey, secondKey)
        );

    // Mean (a- + a+) / 2 and variance a^2 / 3 of a uniform distribution: JCGM 100:2008, 4.3.7. Bounds are five standard
    // errors wide: of a mean sigma / sqrt(n), of a variance sigma^2 sqrt((kurtosis - 1) / n).
    [Theory]
    [InlineData(Distribution.Uniform, 1.8)]
    [InlineData(Distribution.Normal, 3.0)]
    public void Every_dimension_has_the_mean_and_the_variance_of_its_distribution(
        Distribution distribution,
        double kurtosis
    )
    {
        (ToleranceList list, PartChance chance) = Chance(distribution);
        double[][] drawn = Drawn(list, chance);
        for (int i = 0; i < list.Dimensions.Length; i++)
        {
            double[] values = [.. drawn.Select(part => part[i])];
            Tolerance tolerance = list.Of(list.Dimensions[i]);
            double sigma = chance.StandardDeviationMm(list.Dimensions[i]);
            double mean = values.Average();
            double variance = values.Average(value => (value - mean) * (value - mean));

            Assert.InRange((mean - tolerance.MiddleMm) / sigma, -5 / Math.Sqrt(Parts), 5 / Math.Sqrt(Parts));
            double room = 5 * Math.Sqrt((kurtosis + 0.7 - 1) / Parts);
            Assert.InRange(variance / (sigma * sigma), 1 - room, 1 + room);
        }
    }

    [Fact]
    public void Dimensions_vary_by_themselves()
    {
        (ToleranceList list, PartChance chance) = Chance(Distribution.Uniform);
        double[][] drawn = Drawn(list, chance);
        for (int i = 0; i < list.Dimensions.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double middles = list.Of(list.Dimensions[i]).MiddleMm;
                double others = list.Of(list.Dimensions[j]).MiddleMm;
                double covariance = drawn.Average(part => (part[i] - middles) * (part[j] - others));
                double sigmas =
                    chance.StandardDeviationMm(list.Dimensions[i]) * chance.StandardDeviationMm(list.Dimensions[j]);

                // Five standard errors of a correlation of nothing, 1 / sqrt(n).
                Assert.InRange(covariance / sigmas, -5 / Math.Sqrt(Parts), 5 / Math.Sqrt(Parts));
            }
        }
    }

    [Fact]
    public void No_place_of_a_face_leaves_its_profile_and_no_play_is_below_nothing_or_above_its_limit()
    {
        (ToleranceList list, PartChance chance) = Chance(Distribution.Uniform);
        foreach (double[] part in Drawn(list, chance).Take(2_000))
        {
            for (int i = 0; i < part.Length; i++)
            {
                Tolerance tolerance = list.Of(list.Dimensions[i]);
                if (list.Dimensions[i].Deviation == Deviation.Tilt)
                {
                    Assert.True(Math.Abs(part[i - 1]) + Math.Abs(part[i]) <= tolerance.Mm);
                }

                Assert.InRange(part[i], tolerance.IsOneSided ? 0 : -tolerance.Mm, tolerance.Mm);
            }
        }
    }

    private static (ToleranceList, PartChance) Chance(Distribution distribution)
    {
        ToleranceSettings settings = Studied.Everything with { Distribution = distribution };
        ToleranceList list = ToleranceList.For(KnifeCatalogue.Sandpiper.ToKnife(), settings);
        return (list, new PartChance(list, distribution, seed: 7));
    }

    private static double[][] Drawn(ToleranceList list, PartChance chance) =>
        [
            .. Enumerable
                .Range(0, Parts)
                .Select(part =>
                {
                    double[] deviations = new double[list.Dimensions.Length];
                    chance.Draw(part, deviations);
                    return deviations;
                }),
        ];
}
