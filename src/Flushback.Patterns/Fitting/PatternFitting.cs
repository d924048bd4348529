using System.Collections.Immutable;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Materials;
using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Fitting;

/// <summary>Changes a page of dimensions as little as gives what is wanted of the knife.</summary>
public static class PatternFitting
{
    private const int FinestDecimals = 6;
    private const int RoundDecimals = 3;
    private const double SameValue = 1e-9;

    /// <summary>Looks for the least change of the free numbers; readings stay as the page wants them, since every trial is drawn for them.</summary>
    /// <param name="given">The page; every number within its limits.</param>
    /// <param name="settings">What is wanted, and what may be changed.</param>
    /// <param name="cancellation">Looked at once a pose of the spring.</param>
    /// <returns>
    /// What came of it. Chosen numbers are rounded to 0.001 mm or degree, or finer where that would miss what is wanted.
    /// </returns>
    /// <exception cref="ArgumentException">A pull is wanted without the handle.</exception>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static FittedPattern Run(
        PatternParameters given,
        FitSettings settings,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(given);
        ArgumentNullException.ThrowIfNull(settings);
        if (settings.Handle is null && (settings.WantedPullN is not null || settings.MostStressMpa is not null))
        {
            throw new ArgumentException(
                "A pull or a stress is had in the handle; give its settings.",
                nameof(settings)
            );
        }

        LeverSet levers = new(given, settings.Free.ToHashSet());
        FitSettings bounded = WithStress(settings, levers.Filled);
        if (settings.WantedPullN is not null)
        {
            levers.BringIn(settings.WantsNoFindings ? FitSettings.SpringPaths : settings.Free);
        }

        FitTrials trials = new(bounded, cancellation);
        FitSearch search = new(bounded, trials, levers);
        search.Run();
        FitWording wording = new(bounded, search, levers);
        if (search.Reached is { } reached)
        {
            FitTrial rounded = Rounded(trials, levers, reached.Changes, search.Pulls) ?? reached.Trial;
            return Of(
                levers,
                rounded,
                isReached: true,
                wording.Found(rounded, isChanged: Array.Exists(reached.Changes, change => change != 0)),
                []
            );
        }

        (string sentence, ImmutableArray<string> paths) = wording.Missed();
        FitTrial nearest = search.Nearest is { } near
            ? Rounded(trials, levers, near.Changes, _ => true) ?? near.Trial
            : trials.At(given);
        return Of(levers, nearest, isReached: false, sentence, paths);
    }

    private static FitSettings WithStress(FitSettings settings, PatternParameters filled)
    {
        if (settings.WantedPullN is null || settings.MostStressMpa is not null)
        {
            return settings;
        }

        HandleSettings handle = settings.Handle!(filled);
        ValueRange? tensile = handle.SpringSteel.TensileAt(handle.SpringHardnessHrc);
        return settings with { MostStressMpa = SpringStrength.RestShare * tensile?.Low };
    }

    /// <summary>The changes with numbers that can be read, each rounded to the nearest or away from the given one.</summary>
    private static FitTrial? Rounded(FitTrials trials, LeverSet levers, double[] changes, Func<FitTrial, bool> isGood)
    {
        for (int decimals = RoundDecimals; decimals <= FinestDecimals; decimals++)
        {
            foreach (bool away in new[] { false, true })
            {
                double[] rounded = [.. changes.Select((change, i) => Round(levers[i], change, decimals, away))];
                FitTrial trial = trials.At(levers.With(rounded));
                if (trial.IsTold && !trial.Wrong.Any() && isGood(trial))
                {
                    return trial;
                }
            }
        }

        return null;
    }

    private static double Round(Lever lever, double change, int decimals, bool away)
    {
        double unit = Math.Pow(10, -decimals);
        double value = lever.At(change);
        double by = value - lever.From;
        if (Math.Abs(by) < unit / 2)
        {
            return 0;
        }

        double steps = value / unit;
        double whole =
            !away ? Math.Round(steps)
            : by > 0 ? Math.Ceiling(steps)
            : Math.Floor(steps);
        return lever.ChangeTo(Math.Round(whole * unit, decimals));
    }

    private static FittedPattern Of(
        LeverSet levers,
        FitTrial trial,
        bool isReached,
        string sentence,
        ImmutableArray<string> inTheWay
    )
    {
        PatternParameters filled = new PatternLayout(trial.Parameters).Dimensions;
        ImmutableArray<ParameterChange> changes =
        [
            .. PatternLimits
                .All.Select(limit => (Limit: limit, From: limit.Read(levers.Filled), To: limit.Read(filled)))
                .Where(row => row.From is { } from && row.To is { } to && Math.Abs(from - to) > SameValue)
                .Select(row => new ParameterChange(
                    row.Limit,
                    row.From!.Value,
                    row.To!.Value,
                    levers.IndexOf(row.Limit.Path) >= 0
                )),
        ];
        double square = changes
            .Where(change => change.IsFree)
            .Sum(change => Math.Pow((change.To - change.From) / (change.Limit.Most - change.Limit.Least), 2));
        return new FittedPattern
        {
            IsReached = isReached,
            Sentence = sentence,
            Parameters = trial.Parameters,
            Changes = changes,
            ChangePercent = 100 * Math.Sqrt(square),
            PullN = double.IsFinite(trial.PullN) ? trial.PullN : null,
            PeakStressMpa = double.IsFinite(trial.StressMpa) ? trial.StressMpa : null,
            InTheWay = inTheWay,
        };
    }
}
