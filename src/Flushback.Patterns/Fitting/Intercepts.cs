using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Fitting;

/// <summary>
/// How far each lever alone would have to go to take away what is only known to be wrong: the plane through those places
/// stands for where it ends.
/// </summary>
internal sealed class Intercepts(FitTrials trials, LeverSet levers)
{
    private const double FirstStep = 1e-5;
    private const int Halvings = 8;

    // So far inside its end a plane is laid.
    private const double Beyond = 2e-4;

    // Share of the way beyond the edge from where levers are tried: far against the halving, near against any bend.
    private const double Outside = 0.15;

    // A lever that would have to go farther than this runs along the edge of what can be drawn.
    private const double NearMost = 0.1;

    // Shares of the way at which a lever is seen to help at all.
    private static readonly double[] _looks = [1, 0.15];

    /// <summary>The demand that something is taken away; null when no lever alone does it.</summary>
    /// <param name="wrong">What is wrong.</param>
    /// <param name="at">The changes with which it is.</param>
    /// <param name="isNear">
    /// True beside a trial without it: every lever is tried, a little. Otherwise those that are said to take it away, as far as
    /// they go.
    /// </param>
    public Plane? Through(Shortfall wrong, ReadOnlySpan<double> at, bool isNear)
    {
        int[] named = [.. wrong.Paths.Select(levers.IndexOf).Where(index => index >= 0).Distinct()];
        double[] slope = new double[levers.Count];
        foreach (int lever in isNear || named.Length == 0 ? Enumerable.Range(0, levers.Count) : named)
        {
            slope[lever] = Slope(lever, wrong, at, isNear ? NearMost : 1);
        }

        return Array.Exists(slope, s => s != 0)
            ? new Plane(wrong.Key, slope, 1 + Plane.Product(slope, at) + (Beyond * Math.Sqrt(slope.Sum(s => s * s))))
            : null;
    }

    /// <summary>The changes on the way from a trial without something to one with it, where it has just begun.</summary>
    public double[] JustOutside(Shortfall wrong, double[] without, double[] with)
    {
        double[] from = [.. with.Select((_, i) => without.ElementAtOrDefault(i))];
        (double low, double high) = (0, 1);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = IsWithout(wrong, Between(middle)) ? (middle, high) : (low, middle);
        }

        return Between(high + (Outside * (1 - high)));

        double[] Between(double share) => [.. from.Select((start, i) => start + (share * (with[i] - start)))];
    }

    private double Slope(int lever, Shortfall wrong, ReadOnlySpan<double> at, double farthest) =>
        Along(lever, wrong, at, farthest) is { } step ? 1 / step : 0;

    /// <summary>The least change of one lever, up or down, that takes it away; null when none does.</summary>
    private double? Along(int lever, Shortfall wrong, ReadOnlySpan<double> at, double farthest)
    {
        double[] changes = at.ToArray();
        double at0 = at[lever];
        double? best = null;
        double up = Math.Min(levers[lever].Most - at[lever], farthest);
        double down = Math.Min(at[lever] - levers[lever].Least, farthest);
        foreach (double sign in new[] { 1.0, -1.0 })
        {
            double room = sign > 0 ? up : down;
            if (!Array.Exists(_looks, look => IsGone(sign * look * room)))
            {
                continue;
            }

            double last = 0;
            for (double step = Math.Min(FirstStep, room); last < room; step = Math.Min(2 * step, room))
            {
                if (IsGone(sign * step))
                {
                    double found = sign * Halve(last, step, sign);
                    best = best is { } other && Math.Abs(other) < Math.Abs(found) ? best : found;
                    break;
                }

                last = step;
            }
        }

        return best;

        bool IsGone(double by)
        {
            changes[lever] = at0 + by;
            return IsWithout(wrong, changes);
        }

        double Halve(double stays, double gone, double sign)
        {
            for (int i = 0; i < Halvings; i++)
            {
                double middle = (stays + gone) / 2;
                (stays, gone) = IsGone(sign * middle) ? (stays, middle) : (middle, gone);
            }

            return gone;
        }
    }

    private bool IsWithout(Shortfall wrong, double[] changes)
    {
        PatternParameters page = levers.With(changes);
        FitTrial trial = wrong.Stage == FitStage.Check ? trials.At(page) : trials.DrawnFrom(page);
        return trial.IsWithout(wrong);
    }
}
