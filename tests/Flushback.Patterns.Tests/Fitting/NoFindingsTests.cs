using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Handle;
using Flushback.Patterns.Fitting;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Tests.Fitting;

public sealed class NoFindingsTests
{
    [Fact]
    public void A_spring_that_tires_is_changed_until_it_does_not()
    {
        PatternParameters page = new() { Spring = new SpringParameters { PreloadMm = 0.55 } };
        Assert.Contains(Fits.Read(page).Handle.Findings, finding => finding.Code == FindingCodes.SpringTires);

        FittedPattern fitted = PatternFitting.Run(page, Fits.ForNoFindings(inHandle: true, Fits.LeftOutOf(page)));

        Assert.True(fitted.IsReached, fitted.Sentence);
        (BenchReport bench, HandleReport handle) = Fits.Read(fitted.Parameters);
        Assert.DoesNotContain(handle.Findings, finding => finding.Severity > Severity.Note);
        Assert.DoesNotContain(bench.Findings, finding => finding.Severity > Severity.Note);
        Assert.Equal(page.Readings, fitted.Parameters.Readings);
        Assert.EndsWith("and nothing is left to find.", fitted.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_free_is_named_where_it_would_help()
    {
        PatternParameters page = new() { Spring = new SpringParameters { PreloadMm = 0.55 } };

        FittedPattern fitted = PatternFitting.Run(page, Fits.ForNoFindings(inHandle: true, "blade.ricasso_mm"));

        Assert.False(fitted.IsReached);
        Assert.StartsWith(
            "This remains, since what would take it away is not free: spring depth at the nose, ",
            fitted.Sentence,
            StringComparison.Ordinal
        );
        Assert.Contains("The spring tires early", fitted.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_in_conflict_is_changed_until_it_can_be_drawn()
    {
        // The kick is too low for the edge to clear a spring this deep.
        PatternParameters page = new()
        {
            Tang = new TangParameters { KickHeightMm = 1.1 },
            Spring = new SpringParameters { CentreDepthMm = 4.6 },
        };
        Assert.NotNull(PatternDrawing.Make(page).Conflict);

        FittedPattern fitted = PatternFitting.Run(
            page,
            Fits.ForNoFindings(inHandle: false, "tang.kick_height_mm", "spring.centre_depth_mm")
        );

        Assert.True(fitted.IsReached, fitted.Sentence);
        Assert.NotNull(PatternDrawing.Make(fitted.Parameters).Pattern);
        Assert.True(fitted.Parameters.Tang.KickHeightMm > 1.1);
    }

    [Fact]
    public void Of_the_ways_out_of_a_conflict_the_least_change_is_taken()
    {
        PatternParameters page = new()
        {
            Tang = new TangParameters { KickHeightMm = 1.1 },
            Spring = new SpringParameters { CentreDepthMm = 4.6 },
        };
        FittedPattern fitted = PatternFitting.Run(
            page,
            Fits.ForNoFindings(inHandle: false, "tang.kick_height_mm", "spring.centre_depth_mm")
        );

        // A grid of the two numbers over the page's neighbourhood, each point drawn and proved on the bench.
        PatternLimit kick = PatternLimits.Of("tang.kick_height_mm");
        PatternLimit depth = PatternLimits.Of("spring.centre_depth_mm");
        const double Step = 0.01;
        double shortest = double.PositiveInfinity;
        for (int i = 0; i <= 24; i++)
        {
            for (int j = 0; j <= 24; j++)
            {
                double length = Step * Math.Sqrt((i * i) + (j * j));
                PatternParameters tried = depth.Write(
                    kick.Write(page, 1.1 + (i * Step * (kick.Most - kick.Least))),
                    4.6 - (j * Step * (depth.Most - depth.Least))
                );
                if (length < shortest && PatternDrawing.Make(tried).Pattern is not null)
                {
                    shortest = length;
                }
            }
        }

        Assert.InRange(fitted.ChangePercent / 100, shortest - (2 * Step), shortest + 1e-3);
    }
}
