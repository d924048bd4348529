using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Patterns.Fitting;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Tests.Fitting;

public sealed class PullTests
{
    private const double ReadsMm = 1e-6;

    public static TheoryData<string, double, double> Wanted =>
        new()
        {
            { "default", 10, 900 },
            { "default", 15.5, 900 },
            { "round tang", 12, 1000 },
            { "slim", 14, 950 },
            { "given", 11, 880 },
        };

    private static PatternParameters PageOf(string name) =>
        name switch
        {
            "round tang" => new PatternParameters { Tang = new TangParameters { HasHalfStop = false } },
            "slim" => new PatternParameters
            {
                Handle = new HandleParameters { ClosedLengthMm = 80 },
                Tang = new TangParameters { HeightMm = 4.2 },
                Spring = new SpringParameters { NoseDepthMm = 3.1 },
                Readings = new ReadingParameters { HalfStopMm = 0, ClosedMm = 0 },
            },
            "given" => new PatternParameters
            {
                Pins = new PinParameters { CentreBehindMm = 46 },
                Spring = new SpringParameters
                {
                    NoseDepthMm = 3.7,
                    CentreDepthMm = 4.2,
                    RearDepthMm = 3.4,
                    PreloadMm = 0.3,
                },
            },
            _ => new PatternParameters(),
        };

    [Theory]
    [MemberData(nameof(Wanted))]
    public void A_fitted_page_drawn_anew_pulls_as_wanted_within_the_stress_and_reads_as_before(
        string name,
        double pullN,
        double mostStressMpa
    )
    {
        PatternParameters page = PageOf(name);

        FittedPattern fitted = PatternFitting.Run(page, Fits.For(pullN, mostStressMpa));

        Assert.True(fitted.IsReached, fitted.Sentence);
        (BenchReport bench, HandleReport handle) = Fits.Read(fitted.Parameters);
        Assert.InRange(handle.Pull.PullN, 0.99 * pullN, 1.01 * pullN);
        Assert.True(handle.Strength.PeakStressMpa <= mostStressMpa, $"{handle.Strength.PeakStressMpa} MPa");
        Assert.All(
            bench.Stops,
            stop =>
                Assert.Equal(
                    stop.Stop switch
                    {
                        Stop.Open => 0,
                        Stop.HalfStop => page.Readings.HalfStopMm,
                        _ => page.Readings.ClosedMm,
                    },
                    stop.LiftMm,
                    ReadsMm
                )
        );
        Assert.All(
            fitted.Changes.Where(change => change.IsFree),
            change => Assert.InRange(change.To, change.Limit.Least, change.Limit.Most)
        );
        Assert.Equal(handle.Pull.PullN, fitted.PullN!.Value, 1e-3);
    }

    [Fact]
    public void A_pull_that_no_spring_gives_names_what_stops_it_and_the_nearest()
    {
        FittedPattern fitted = PatternFitting.Run(new PatternParameters(), Fits.For(200, 900, "spring.preload_mm"));

        Assert.False(fitted.IsReached);
        Assert.StartsWith(
            "No change of preload within the limits gives 200.0 N (45.0 lbf) at the nail nick: ",
            fitted.Sentence,
            StringComparison.Ordinal
        );
        Assert.Contains("the stress is at the 900 MPa allowed", fitted.Sentence, StringComparison.Ordinal);
        Assert.Contains("; the nearest is ", fitted.Sentence, StringComparison.Ordinal);
        Assert.Equal(["spring.preload_mm"], fitted.Changes.Where(change => change.IsFree).Select(c => c.Limit.Path));

        // The nearest bears the stress to within a share of 0.001, and a little more preload would not.
        (_, HandleReport nearest) = Fits.Read(fitted.Parameters);
        Assert.InRange(nearest.Strength.PeakStressMpa, 0.999 * 900, 900);
        Assert.Equal(nearest.Pull.PullN, fitted.PullN!.Value, 1e-6);
    }

    [Fact]
    public void A_limit_of_a_dimension_that_stops_a_pull_is_named()
    {
        FittedPattern fitted = PatternFitting.Run(new PatternParameters(), Fits.For(2, null, "spring.preload_mm"));

        Assert.False(fitted.IsReached);
        Assert.Contains("the preload is at its least of 0.00 mm (0.000 in)", fitted.Sentence, StringComparison.Ordinal);
        Assert.Equal(0, fitted.Parameters.Spring.PreloadMm);
        Assert.Equal("spring.preload_mm", Assert.Single(fitted.InTheWay));
    }

    [Fact]
    public void What_is_there_already_is_left_as_it_is()
    {
        PatternParameters page = new();
        (_, HandleReport handle) = Fits.Read(page);

        FittedPattern fitted = PatternFitting.Run(page, Fits.For(handle.Pull.PullN, 1000));

        Assert.True(fitted.IsReached);
        Assert.Empty(fitted.Changes);
        Assert.Equal(0, fitted.ChangePercent);
        Assert.StartsWith("As it is, ", fitted.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_page_is_fitted_the_same_every_time()
    {
        FittedPattern first = PatternFitting.Run(new PatternParameters(), Fits.For(12, 870));
        FittedPattern second = PatternFitting.Run(new PatternParameters(), Fits.For(12, 870));

        Assert.Equal(first.Parameters, second.Parameters);
        Assert.Equal(Told(first), Told(second));
        Assert.Equal(first.Sentence, second.Sentence);
    }

    private static IEnumerable<(string, double, double, bool)> Told(FittedPattern fitted) =>
        fitted.Changes.Select(change => (change.Limit.Path, change.From, change.To, change.IsFree));

    [Fact]
    public async Task A_fit_ends_when_it_is_cancelled()
    {
        using CancellationTokenSource source = new();
        Task<FittedPattern> fit = Task.Run(
            () => PatternFitting.Run(new PatternParameters(), Fits.For(60, 900), source.Token),
            CancellationToken.None
        );
        await source.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => fit);
    }
}
