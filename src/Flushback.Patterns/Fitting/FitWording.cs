using System.Collections.Immutable;
using Flushback.Patterns.Conflicts;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Fitting;

/// <summary>What came of a fit, in one sentence for the maker.</summary>
internal sealed class FitWording(FitSettings settings, FitSearch search, LeverSet levers)
{
    private const int MostNames = 5;

    /// <summary>Everything is reached.</summary>
    public string Found(FitTrial trial, bool isChanged)
    {
        string changed = isChanged ? "Changed so" : "As it is";
        string found = settings.WantsNoFindings ? "nothing is left to find" : "";
        if (!double.IsFinite(trial.PullN))
        {
            return $"{changed}, {found}.";
        }

        string and = found.Length > 0 ? $", and {found}" : "";
        return FormattableString.Invariant(
            $"{changed}, the blade takes {Said.Force(trial.PullN)} at the nail nick and the spring bears {trial.StressMpa:0} MPa at most{and}."
        );
    }

    /// <summary>Not everything is reached: what remains, what stands in the way, and the paths of that.</summary>
    public (string Sentence, ImmutableArray<string> Paths) Missed()
    {
        ImmutableArray<string> paths =
        [
            .. search.Against.SelectMany(PathsOf).Distinct().Where(path => levers.IndexOf(path) >= 0),
        ];
        if (settings.WantedPullN is { } pull && search.Nearest is { } nearest)
        {
            return (
                FormattableString.Invariant(
                    $"No change of {Names(Free())} within the limits gives {Said.Force(pull)} at the nail nick: {Why()}; the nearest is {Said.Force(nearest.Trial.PullN)}, at {nearest.Trial.StressMpa:0} MPa."
                ),
                paths
            );
        }

        Shortfall? remains = search.Last?.Wrong.FirstOrDefault();
        if (remains is null)
        {
            return ("The search ended before everything was reached; free fewer dimensions, or ask for less.", paths);
        }

        ImmutableArray<string> able = remains.Paths.IsDefaultOrEmpty ? [] : remains.Paths;
        string why =
            able.Length == 0 ? "no dimension of the page changes it"
            : able.All(path => levers.IndexOf(path) < 0) ? $"what would take it away is not free: {Names(able)}"
            : paths.Length > 1 ? $"{Names(paths)} pull against one another"
            : $"no change of {Names(able.Where(path => levers.IndexOf(path) >= 0))} takes it away";
        return ($"This remains, since {why}: {remains.Sentence}", paths.IsEmpty ? able : paths);
    }

    private IEnumerable<string> Free() => Enumerable.Range(0, levers.Count).Select(i => levers[i].Limit.Path);

    /// <summary>What stands in the way of the pull.</summary>
    private string Why()
    {
        List<string> reasons = [];
        foreach (string key in search.Against)
        {
            if (key == FitTrials.StressKey)
            {
                reasons.Add(
                    FormattableString.Invariant($"the stress is at the {settings.MostStressMpa:0} MPa allowed")
                );
            }
            else if (levers.IndexOf(key) is >= 0 and int lever)
            {
                reasons.Add(AtLimit(levers[lever]));
            }
            else if (PathsOf(key).Any(PatternLimits.Has))
            {
                reasons.Add($"{Names(PathsOf(key))} go no farther together");
            }
        }

        return reasons.Count > 0 ? string.Join(", ", reasons.Distinct()) : "other dimensions of the page hold it back";
    }

    private string AtLimit(Lever lever)
    {
        double value = lever.Limit.Read(search.Nearest!.Value.Trial.Parameters) ?? lever.From;
        bool isLeast = value - lever.Limit.Least < lever.Limit.Most - value;
        double limit = isLeast ? lever.Limit.Least : lever.Limit.Most;
        return $"the {lever.Limit.Name} is at its {(isLeast ? "least" : "most")} of {InUnit(lever.Limit, limit)}";
    }

    private static string InUnit(PatternLimit limit, double value) =>
        limit.Unit == "mm" ? Said.Length(value) : Said.Degrees(value);

    private static IEnumerable<string> PathsOf(string key) => key.Split('+');

    private static string Names(IEnumerable<string> paths)
    {
        string[] names = [.. paths.Where(PatternLimits.Has).Select(path => PatternLimits.Of(path).Name)];
        return names.Length switch
        {
            0 => "the dimensions",
            1 => names[0],
            > MostNames => $"{string.Join(", ", names.Take(MostNames))} and {names.Length - MostNames} more",
            _ => $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}",
        };
    }
}
