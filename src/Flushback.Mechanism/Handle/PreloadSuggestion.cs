using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Handle;

/// <summary>The preload for a wanted pull, or why there is none.</summary>
/// <param name="PreloadMm">The preload; null when there is none.</param>
/// <param name="PullN">Pull at that preload, or the nearest that can be had.</param>
/// <param name="PeakStressMpa">Peak stress at that preload, or at the nearest.</param>
/// <param name="Sentence">What was found, in one sentence for the maker.</param>
public sealed record PreloadSuggestion(double? PreloadMm, double PullN, double PeakStressMpa, string Sentence)
{
    private const double MostPreloadMm = 4;
    private const double SamePullN = 1e-4;
    private const int Rounds = 40;

    private static readonly Angle _step = Angle.FromDegrees(1);

    /// <summary>Finds the preload that gives a pull at the nail nick, with friction.</summary>
    /// <param name="placement">The knife.</param>
    /// <param name="settings">Spring and steel; its preload is not used.</param>
    /// <param name="pullN">Wanted pull, in newtons.</param>
    /// <param name="mostStressMpa">Bending stress not to be passed, in MPa.</param>
    /// <param name="cancellation">Looked at once a blade angle.</param>
    /// <returns>The answer, or every problem with the input.</returns>
    public static (PreloadSuggestion? Suggestion, ImmutableArray<KnifeProblem> Problems) For(
        Placement placement,
        HandleSettings settings,
        double pullN,
        double mostStressMpa,
        CancellationToken cancellation = default
    )
    {
        HandleSettings none = settings with { PreloadKind = PreloadKind.Sink, PreloadMm = 0 };
        (HandleModel? model, ImmutableArray<KnifeProblem> problems) = HandleCheck.Build(placement, none, cancellation);
        return model is null
            ? (null, problems)
            : (Search(new Trials(model.Ground, none, cancellation), pullN, mostStressMpa), []);
    }

    internal static PreloadSuggestion For(
        BenchGround ground,
        HandleSettings settings,
        double pullN,
        double mostStressMpa,
        CancellationToken cancellation
    )
    {
        HandleSettings none = settings with { PreloadKind = PreloadKind.Sink, PreloadMm = 0 };
        return Search(new Trials(ground, none, cancellation), pullN, mostStressMpa);
    }

    private static PreloadSuggestion Search(Trials trials, double pullN, double mostStressMpa)
    {
        (double low, double high) = (0, MostPreloadMm);
        Trial least = trials.At(low);
        if (least.StressMpa > mostStressMpa)
        {
            return None(
                least,
                $"even without preload the lift alone bends the spring to {least.StressMpa:0} MPa, over the {mostStressMpa:0} MPa allowed; a thinner or longer spring is needed"
            );
        }

        if (least.PullN > pullN)
        {
            return None(
                least,
                $"even without preload the blade takes {least.PullN:0.0} N, more than the {pullN:0.0} N wanted; a thinner or narrower spring is needed"
            );
        }

        Trial most = trials.At(high);
        if (most.PullN < pullN)
        {
            return None(
                most,
                $"even a preload of {MostPreloadMm:0} mm gives only {most.PullN:0.0} N of the {pullN:0.0} N wanted; a deeper or wider spring is needed"
            );
        }

        // Pull grows with preload, nearly in proportion: regula falsi, halved when one end stays.
        Trial found = least;
        for (int round = 0; round < Rounds && Math.Abs(found.PullN - pullN) > SamePullN; round++)
        {
            double share = (pullN - least.PullN) / (most.PullN - least.PullN);
            double at = round % 4 == 3 ? (low + high) / 2 : low + (share * (high - low));
            found = trials.At(at);
            (low, least, high, most) = found.PullN < pullN ? (at, found, high, most) : (low, least, at, found);
        }

        double preload = found.PreloadMm;
        return found.StressMpa <= mostStressMpa
            ? new PreloadSuggestion(
                preload,
                found.PullN,
                found.StressMpa,
                FormattableString.Invariant(
                    $"A preload of {Said.Length(preload)} gives {found.PullN:0.0} N at the nail nick with a peak stress of {found.StressMpa:0} MPa."
                )
            )
            : None(
                found,
                $"{pullN:0.0} N needs a preload of {preload:0.000} mm, which bends the spring to {found.StressMpa:0} MPa, over the {mostStressMpa:0} MPa allowed; a wider spring of less depth is needed"
            );
    }

    private static PreloadSuggestion None(Trial nearest, FormattableString why) =>
        new(
            null,
            nearest.PullN,
            nearest.StressMpa,
            FormattableString.Invariant($"There is no such preload: {FormattableString.Invariant(why)}.")
        );

    private readonly record struct Trial(double PreloadMm, double PullN, double StressMpa);

    private sealed class Trials(BenchGround ground, HandleSettings settings, CancellationToken cancellation)
    {
        public Trial At(double preloadMm)
        {
            HandleModel model = new(ground, settings with { PreloadMm = preloadMm }, 0, cancellation);
            HandleSweep sweep = new(model, _step, cancellation);
            return new Trial(preloadMm, sweep.Pull.PullN, sweep.PeakStressMpa);
        }
    }
}
