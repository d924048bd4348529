using System.Reflection;
using CsCheck;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Tests;

/// <summary>The one table of units, defaults, limits and meanings, and that nothing inside it makes the drawing fail.</summary>
public sealed class LimitsTests
{
    private static readonly Type[] _groups =
    [
        typeof(HandleParameters),
        typeof(PinParameters),
        typeof(TangParameters),
        typeof(SpringParameters),
        typeof(BladeParameters),
        typeof(ReadingParameters),
        typeof(StockParameters),
    ];

    [Fact]
    public void Every_number_of_a_pattern_has_its_row_and_every_row_writes_its_own_number()
    {
        int numbers = _groups.Sum(group =>
            group
                .GetProperties(BindingFlags.Public | BindingFlags.Instance)
                .Count(property => property.PropertyType == typeof(double) || property.PropertyType == typeof(double?))
        );
        Assert.Equal(numbers, PatternLimits.All.Length);
        Assert.Equal(numbers, PatternLimits.All.Select(limit => limit.Path).Distinct().Count());
        Assert.Equal(numbers, PatternLimits.All.Select(limit => limit.Name).Distinct().Count());
        foreach (PatternLimit limit in PatternLimits.All)
        {
            double inside = limit.Least + (0.37 * (limit.Most - limit.Least));
            PatternParameters written = limit.Write(PatternParameters.Default, inside);
            Assert.Equal(inside, limit.Read(written));
            PatternLimit other = Assert.Single(
                PatternLimits.All,
                row => row.Read(written) != row.Read(PatternParameters.Default)
            );
            Assert.Same(limit, other);
            Assert.Equal(limit, PatternLimits.Of(limit.Path));
        }
    }

    [Fact]
    public void A_default_lies_inside_its_limits_or_says_what_it_follows_from()
    {
        foreach (PatternLimit limit in PatternLimits.All)
        {
            Assert.True(limit.Least < limit.Most, limit.Path);
            Assert.Equal(limit.Default is null, limit.Follows is not null);
            Assert.True(limit.Default is not { } value || (value >= limit.Least && value <= limit.Most), limit.Path);
            Assert.EndsWith($"_{limit.Unit}", limit.Path, StringComparison.Ordinal);
            Assert.EndsWith(".", limit.Meaning, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(-1e9)]
    [InlineData(1e9)]
    public void A_number_outside_its_limits_is_refused_by_name(double value)
    {
        foreach (PatternLimit limit in PatternLimits.All)
        {
            (DrawnPattern? pattern, PatternConflict? conflict) = PatternDrawing.Make(
                limit.Write(PatternParameters.Default, value)
            );
            Assert.Null(pattern);
            Assert.Equal(limit.Path, Assert.Single(conflict!.Parameters));
            Assert.Contains(limit.Name, conflict.Sentence, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Each_limit_by_itself_gives_a_knife_or_a_conflict_that_names_known_numbers()
    {
        foreach (PatternLimit limit in PatternLimits.All)
        {
            foreach (double value in new[] { limit.Least, limit.Most })
            {
                foreach (bool hasHalfStop in new[] { true, false })
                {
                    PatternParameters page = limit.Write(PatternParameters.Default, value);
                    GivesKnifeOrConflict(page with { Tang = page.Tang with { HasHalfStop = hasHalfStop } });
                }
            }
        }
    }

    /// <summary>Each number on its own anywhere between its limits, or left out: hardly ever a knife, never an error.</summary>
    [Fact]
    public void Any_page_inside_the_limits_gives_a_knife_or_a_conflict_that_names_known_numbers()
    {
        Gen.Int[0, int.MaxValue].Sample(seed => GivesKnifeOrConflict(AnyPage(seed)), iter: 2000);
    }

    /// <summary>The default page with some numbers taken from anywhere between their limits.</summary>
    [Fact]
    public void Any_few_numbers_changed_give_a_knife_or_a_conflict_that_names_known_numbers()
    {
        Gen.Int[0, int.MaxValue].Sample(seed => GivesKnifeOrConflict(FewChanged(seed)), iter: 1000);
    }

    private static void GivesKnifeOrConflict(PatternParameters page)
    {
        (DrawnPattern? pattern, PatternConflict? conflict) = PatternDrawing.Make(page);
        Assert.True(pattern is null != conflict is null);
        if (conflict is not null)
        {
            Assert.NotEmpty(conflict.Parameters);
            Assert.All(
                conflict.Parameters.Where(path => path != "blade.family"),
                path => Assert.Equal(path, PatternLimits.Of(path).Path)
            );
            Assert.DoesNotContain("NaN", conflict.Sentence, StringComparison.Ordinal);
            Assert.EndsWith(".", conflict.Sentence, StringComparison.Ordinal);
        }
    }

#pragma warning disable CA5394
    private static PatternParameters AnyPage(int seed)
    {
        Random random = new(seed);
        return PatternLimits.All.Aggregate(
            Shape(random),
            (page, limit) =>
                limit.Follows is not null && random.Next(2) == 0 ? page : limit.Write(page, Between(random, limit))
        );
    }

    private static PatternParameters FewChanged(int seed)
    {
        Random random = new(seed);
        PatternParameters page = Shape(random);
        for (int i = random.Next(1, 5); i > 0; i--)
        {
            PatternLimit limit = PatternLimits.All[random.Next(PatternLimits.All.Length)];
            page = limit.Write(page, Between(random, limit));
        }

        return page;
    }

    private static PatternParameters Shape(Random random)
    {
        PatternParameters page = PatternParameters.Default;
        return page with
        {
            Blade = page.Blade with { Family = (BladeFamily)random.Next(Enum.GetValues<BladeFamily>().Length) },
            Tang = page.Tang with { HasHalfStop = random.Next(2) == 0 },
        };
    }

    private static double Between(Random random, PatternLimit limit) =>
        limit.Least + ((limit.Most - limit.Least) * random.NextDouble());
#pragma warning restore CA5394
}
