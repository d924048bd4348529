using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Fitting;

/// <summary>The numbers in play. A number that is free but not in play goes on following from the others.</summary>
internal sealed class LeverSet(PatternParameters given, IReadOnlySet<string> free)
{
    private readonly PatternParameters _filled = new PatternLayout(given).Dimensions;
    private readonly List<Lever> _levers = [];

    /// <summary>How many are in play.</summary>
    public int Count => _levers.Count;

    /// <summary>One of them.</summary>
    public Lever this[int index] => _levers[index];

    /// <summary>The page as given, filled in.</summary>
    public PatternParameters Filled => _filled;

    /// <summary>
    /// Brings into play what may take away what is wrong, or every free number where none that is named is free; true when
    /// there was a new one.
    /// </summary>
    public bool BringInFor(IEnumerable<Shortfall> wrongs) =>
        BringIn(
            wrongs.SelectMany(wrong =>
                wrong.Stage == FitStage.Check || wrong.Paths.Any(free.Contains)
                    ? (IEnumerable<string>)wrong.Paths
                    : free.Order()
            )
        );

    /// <summary>Brings numbers into play where they are free and have a value; true when there was a new one.</summary>
    public bool BringIn(IEnumerable<string> paths)
    {
        int before = Count;
        foreach (string path in paths.Where(free.Contains))
        {
            PatternLimit limit = PatternLimits.Of(path);
            if (IndexOf(path) < 0 && limit.Read(_filled) is { } from && double.IsFinite(from))
            {
                _levers.Add(new Lever(limit, from));
            }
        }

        return Count > before;
    }

    /// <summary>Where a number stands among those in play; -1 when it is not.</summary>
    public int IndexOf(string path) => _levers.FindIndex(lever => lever.Limit.Path == path);

    /// <summary>The page with changes.</summary>
    public PatternParameters With(ReadOnlySpan<double> changes)
    {
        PatternParameters parameters = given;
        for (int i = 0; i < changes.Length; i++)
        {
            parameters = _levers[i].Limit.Write(parameters, _levers[i].At(changes[i]));
        }

        return parameters;
    }
}
