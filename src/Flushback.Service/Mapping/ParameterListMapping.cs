using Flushback.Patterns.Parameters;

namespace Flushback.Service.Mapping;

/// <summary>The table of all parameters of a pattern, to the contract: the numbers, and the two choices among them.</summary>
internal static class ParameterListMapping
{
    /// <summary>All of them, group by group.</summary>
    public static IEnumerable<Wire.PatternParameter> All =>
        PatternLimits
            .All.GroupBy(limit => limit.Group)
            .SelectMany(group => ChoicesOf(group.Key).Concat(group.Select(ToWire)));

    private static IEnumerable<Wire.PatternParameter> ChoicesOf(string group) =>
        group switch
        {
            "tang" =>
            [
                new Wire.PatternParameter
                {
                    Field = "tang.half_stop",
                    Name = "half stop",
                    Meaning = "Whether the tang stops at the half stop, or is round.",
                    Choices = { "yes", "no" },
                },
            ],
            "blade" =>
            [
                new Wire.PatternParameter
                {
                    Field = "blade.family",
                    Name = "blade family",
                    Meaning = "Shape of the blade, by the names of the trade.",
                    Choices = { Enum.GetValues<BladeFamily>().Select(WordOf) },
                },
            ],
            _ => [],
        };

    private static Wire.PatternParameter ToWire(PatternLimit limit)
    {
        Wire.PatternParameter wire = new()
        {
            Field = limit.Path,
            Name = limit.Name,
            Meaning = limit.Meaning,
            Unit = limit.Unit,
            Least = limit.Least,
            Most = limit.Most,
            Follows = limit.Follows ?? "",
        };
        if (limit.Default is { } value)
        {
            wire.DefaultValue = value;
        }

        return wire;
    }

    // ClipPoint is "clip point".
    private static string WordOf(BladeFamily family) =>
        string.Concat(
                family.ToString().Select((letter, i) => i > 0 && char.IsUpper(letter) ? $" {letter}" : $"{letter}")
            )
            .ToLowerInvariant();
}
