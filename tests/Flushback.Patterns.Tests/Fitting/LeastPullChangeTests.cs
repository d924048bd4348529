using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Fitting;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Tests.Fitting;

/// <summary>
/// The least change of two numbers against a walk along a grid of the first, at each of which the second is halved down to the
/// wanted pull: it knows nothing of slopes or demands.
/// </summary>
public sealed class LeastPullChangeTests
{
    private const int Columns = 12;
    private const int Halvings = 11;

    [Theory]
    [InlineData(11, "spring.preload_mm", "spring.centre_depth_mm", -0.06, 0.0)]
    [InlineData(11.5, "pins.centre_behind_mm", "spring.centre_depth_mm", -0.01, 0.04)]
    public void No_pair_on_the_grid_gives_the_pull_with_less_change(
        double pullN,
        string first,
        string second,
        double least,
        double most
    )
    {
        PatternParameters page = new();
        FittedPattern fitted = PatternFitting.Run(page, Fits.For(pullN, 1200, first, second));
        Assert.True(fitted.IsReached, fitted.Sentence);
        PatternParameters filled = Tests.Bench.Make(page).Dimensions;

        double shortest = double.PositiveInfinity;
        for (int i = 0; i <= Columns; i++)
        {
            double x = least + ((most - least) * i / Columns);
            if (Root(filled, page, first, second, x, pullN) is { } y)
            {
                shortest = Math.Min(shortest, Math.Sqrt((x * x) + (y * y)));
            }
        }

        // Rounded to 0.001 mm the fit may be longer by some hundredths of a percent, and the grid misses the least by less
        // than its own step squared over the length.
        Assert.InRange(fitted.ChangePercent / 100, shortest - 0.001, shortest + 0.0005);
    }

    /// <summary>The change of the second number that gives the pull, within some percent of its range; null when none does.</summary>
    private static double? Root(
        PatternParameters filled,
        PatternParameters page,
        string first,
        string second,
        double x,
        double pullN
    )
    {
        (double low, double high) = (-0.027, 0);
        double? atLow = Pull(low);
        double? atHigh = Pull(high);
        if (atLow is not { } pullLow || atHigh is not { } pullHigh || pullLow > pullN == pullHigh > pullN)
        {
            return null;
        }

        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Pull(middle)!.Value > pullN == pullHigh > pullN ? (low, middle) : (middle, high);
        }

        return (low + high) / 2;

        double? Pull(double y)
        {
            PatternParameters moved = Moved(Moved(page, filled, first, x), filled, second, y);
            if (PatternDrawing.Make(moved).Pattern is not { } pattern)
            {
                return null;
            }

            Placement placement = new(pattern.Knife, RigidMotion.Identity, Angle.Zero, DrawnBladeAngleFound: false);
            BenchReport bench = BenchCheck.Run(placement, Fits.BenchOf(pattern.Dimensions));
            return HandleCheck.RunBriefly(bench, Fits.HandleOf(pattern.Dimensions)).Report?.Pull.PullN;
        }
    }

    private static PatternParameters Moved(PatternParameters page, PatternParameters filled, string path, double by)
    {
        PatternLimit limit = PatternLimits.Of(path);
        return limit.Write(page, limit.Read(filled)!.Value + (by * (limit.Most - limit.Least)));
    }
}
