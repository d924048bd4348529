using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Conflicts;

/// <summary>Numbers that were left out and that the others bring outside their limits.</summary>
internal static class FollowingRules
{
    /// <summary>The conflicts of numbers that follow from others.</summary>
    public static IEnumerable<PatternConflict> Of(PatternLayout layout)
    {
        foreach (PatternLimit limit in PatternLimits.All.Where(limit => limit.Read(layout.Given) is null))
        {
            if (limit.Read(layout.Dimensions) is { } value && !(value >= limit.Least && value <= limit.Most))
            {
                string which = value < limit.Least ? "least" : "most";
                yield return Conflict.Of(
                    FormattableString.Invariant(
                        $"Left out, the {limit.Name} becomes {value:0.##} {limit.Unit} ({limit.Follows}), but {(value < limit.Least ? limit.Least : limit.Most):0.##} {limit.Unit} is the {which}; give it, or change what it follows from."
                    ),
                    limit.Path
                );
            }
        }
    }
}
