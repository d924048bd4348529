using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Handle.Suggestions;
using Flushback.Mechanism.Knives;

namespace Flushback.Handle.Tests;

public class SuggestionTests
{
    private static readonly BenchReport _bench = Placed.OnTheBench(SoundKnife.Design);

    public static TheoryData<Dimension, double> Reachable
    {
        get
        {
            TheoryData<Dimension, double> wanted = [];
            foreach (
                Dimension dimension in new[]
                {
                    Dimension.Preload,
                    Dimension.SpringWidth,
                    Dimension.SpringDepth,
                    Dimension.CentrePinForward,
                }
            )
            {
                // The knife as it is takes 10.2 N: more and less of it.
                wanted.Add(dimension, 8.5);
                wanted.Add(dimension, 11.5);
            }

            return wanted;
        }
    }

    [Theory]
    [MemberData(nameof(Reachable))]
    public void What_is_suggested_gives_the_pull_when_the_knife_is_made_so(Dimension dimension, double pull)
    {
        Suggestion suggestion = Suggest(dimension, pull, 900);
        double value = Assert.NotNull(suggestion.ValueMm);
        Assert.Equal(dimension, suggestion.Of);
        Assert.Equal(pull, suggestion.PullN, 1e-3);
        Assert.InRange(suggestion.PeakStressMpa, 500, 900);

        // A back drawn anew moves the centreline too, to which the depth is cut square: a thousandth off.
        double relative = dimension == Dimension.SpringDepth ? 1e-3 : 2e-6;
        HandleReport made = Made(dimension, value);
        Close.To(pull, made.Pull.PullN, relative);
        Close.To(suggestion.PeakStressMpa, made.Strength.PeakStressMpa, relative);
    }

    [Fact]
    public void A_heavier_pull_takes_a_deeper_and_a_lighter_one_a_shallower_spring()
    {
        Assert.InRange(Suggest(Dimension.SpringDepth, 11.5, 900).ValueMm!.Value, 0.05, 0.5);
        Assert.InRange(Suggest(Dimension.SpringDepth, 8.5, 900).ValueMm!.Value, -0.5, -0.05);
    }

    [Theory]
    [InlineData(Dimension.Preload, 20, "needs a preload of")]
    [InlineData(Dimension.SpringDepth, 20, "needs a spring")]
    [InlineData(Dimension.CentrePinForward, 15, "needs the centre pin")]
    public void Where_the_pull_asks_too_much_of_the_steel_the_most_within_it_is_told(
        Dimension dimension,
        double pull,
        string reason
    )
    {
        Suggestion none = Suggest(dimension, pull, 900);
        Assert.Null(none.ValueMm);
        Assert.Contains(reason, none.Sentence, StringComparison.Ordinal);
        Assert.Contains("over the 900 MPa allowed", none.Sentence, StringComparison.Ordinal);

        // The steel is used to the limit, and no pull nearer to the wanted one is to be had within it.
        Assert.Equal(900, none.PeakStressMpa, 0.1);
        Assert.Null(Suggest(dimension, none.PullN + 0.1, 900).ValueMm);
        Assert.NotNull(Suggest(dimension, none.PullN - 0.1, 900).ValueMm);
    }

    [Theory]
    [InlineData(Dimension.Preload, 1)]
    [InlineData(Dimension.Preload, 500)]
    [InlineData(Dimension.SpringWidth, 1)]
    [InlineData(Dimension.SpringWidth, 500)]
    [InlineData(Dimension.SpringDepth, 500)]
    [InlineData(Dimension.CentrePinForward, 1)]
    public void A_pull_that_nothing_gives_is_answered_with_the_nearest(Dimension dimension, double pull)
    {
        Suggestion none = Suggest(dimension, pull, 90_000);
        Assert.Null(none.ValueMm);
        Assert.Matches("^No .* gives .* at the nail nick; the nearest within 90000 MPa is ", none.Sentence);
        Assert.InRange(none.PullN, Math.Min(pull, 1.5), Math.Max(pull, 10.2));
        Assert.NotNull(Suggest(dimension, none.PullN + (pull < 10 ? 0.1 : -0.1), 90_000).ValueMm);
    }

    [Theory]
    [InlineData(Dimension.Preload)]
    [InlineData(Dimension.SpringWidth)]
    [InlineData(Dimension.SpringDepth)]
    [InlineData(Dimension.CentrePinForward)]
    public void A_stress_that_the_lift_alone_passes_is_answered_with_the_least(Dimension dimension)
    {
        Suggestion none = Suggest(dimension, 11, 300);
        Assert.Null(none.ValueMm);
        Assert.Contains("keeps the spring within 300 MPa; the least found is", none.Sentence, StringComparison.Ordinal);
        Assert.InRange(none.PeakStressMpa, 300, 722);
    }

    [Fact]
    public void Every_answer_is_one_sentence()
    {
        foreach ((double pull, double stress) in new[] { (11.0, 900.0), (20, 900), (1, 900), (11, 300) })
        {
            string sentence = Suggest(Dimension.SpringDepth, pull, stress).Sentence;
            Assert.True(char.IsUpper(sentence[0]));
            Assert.EndsWith(".", sentence, StringComparison.Ordinal);
            Assert.DoesNotContain(". ", sentence, StringComparison.Ordinal);
            Assert.DoesNotContain("-0.0", sentence, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Without_a_limit_of_ones_own_the_stress_is_held_to_what_the_steel_bears_at_rest()
    {
        HandleReport report = Run(SoundKnife.Settings with { WantedPullN = 40, Varied = Dimension.SpringDepth });
        double borne = 0.75 * report.Strength.TensileMpa!.Value.Low;
        Assert.Null(report.Suggestion!.ValueMm);
        Assert.Equal(borne, report.Suggestion.PeakStressMpa, 0.1);
    }

    [Fact]
    public void An_assumption_can_not_be_varied()
    {
        HandleSettings settings = SoundKnife.Settings with { WantedPullN = 11, Varied = Dimension.StiffNose };
        Assert.Throws<ArgumentOutOfRangeException>(() => Run(settings));
    }

    private static Suggestion Suggest(Dimension dimension, double pullN, double mostStressMpa)
    {
        HandleModel model = new(
            new BenchGround(_bench.Placement.Knife, default),
            SoundKnife.Settings with
            {
                Varied = dimension,
                WantedPullN = pullN,
                MostStressMpa = mostStressMpa,
            }
        );
        return SuggestionSearch.For(model, _bench.Settings.Step, default)!;
    }

    private static HandleReport Run(HandleSettings settings) => Run(_bench, settings);

    private static HandleReport InTheHandle(DrawnKnife drawn, HandleSettings settings) =>
        Run(Placed.OnTheBench(drawn), settings);

    private static HandleReport Run(BenchReport bench, HandleSettings settings)
    {
        (HandleReport? report, var problems) = HandleCheck.Run(bench, settings);
        Assert.Empty(problems);
        return report!;
    }

    /// <summary>The knife drawn anew with a dimension changed; the stiff nose held where it was.</summary>
    private static HandleReport Made(Dimension dimension, double valueMm)
    {
        double stiff = Run(SoundKnife.Settings).Spring.StiffNoseMm;
        HandleSettings settings = SoundKnife.Settings with { StiffNoseMm = stiff };
        SpringDesign spring = SoundKnife.Design.Spring;
        DrawnKnife drawn = SoundKnife.Design.ToDrawn();
        return dimension switch
        {
            Dimension.Preload => Run(settings with { PreloadMm = valueMm }),
            Dimension.SpringWidth => Run(settings with { WidthMm = valueMm }),
            Dimension.SpringDepth => Placed.InTheHandle(
                SoundKnife.Design with
                {
                    Spring = spring with { DepthMm = spring.DepthMm + valueMm },
                },
                settings
            ),
            _ => InTheHandle(
                drawn with
                {
                    CentrePin = drawn.CentrePin with { Centre = drawn.CentrePin.Centre + new Vector(valueMm, 0) },
                },
                settings
            ),
        };
    }
}
