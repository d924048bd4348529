using Flushback.Patterns.Pairs;
using Flushback.Patterns.Parameters;

namespace Flushback.Service.Mapping;

/// <summary>The tables of all parameters of a pattern, and of what stands beside it on a page, to the contract.</summary>
internal static class ParameterListMapping
{
    private const string SecondBlade = "second_blade";

    /// <summary>All of them, group by group.</summary>
    public static IEnumerable<Wire.PatternParameter> All =>
        PatternLimits
            .All.GroupBy(limit => limit.Group)
            .SelectMany(group => ChoicesOf(group.Key).Concat(group.Select(ToWire)));

    /// <summary>How two blades share the handle, everything of the second blade, and what a fit may change.</summary>
    public static IEnumerable<Wire.PatternParameter> BesidePattern =>
        [
            new Wire.PatternParameter
            {
                Field = "arrangement",
                Name = "arrangement",
                Meaning =
                    "How two blades share the handle: at either end of one spring with a nose at both ends, or under two springs side by side.",
                Choices = { "one blade", "shared spring", "two springs" },
            },
            new Wire.PatternParameter
            {
                Field = $"{SecondBlade}.at_other_end",
                Name = "end of the second blade",
                Meaning =
                    "Whether the second blade opens at the other end of the handle; always so on a shared spring.",
                Choices = { "yes", "no" },
            },
            .. SecondBladeLimits.All.Select(ToWire),
            .. All.Where(parameter => IsOfEveryBlade(parameter.Field)).Select(OfSecondBlade),
            new Wire.PatternParameter
            {
                Field = "fit.free",
                Name = "free dimensions",
                Meaning =
                    "Dimensions that a fit may change, as a list of their fields; without a fit it changes nothing.",
                Follows =
                    "depth of the spring at nose, centre pin and rear pin, place of the centre pin and preload for a wanted pull, and what the page leaves out for no findings",
            },
        ];

    private static bool IsOfEveryBlade(string field) => field.Split('.')[0] is "tang" or "blade" or "readings";

    private static Wire.PatternParameter OfSecondBlade(Wire.PatternParameter first)
    {
        Wire.PatternParameter second = first.Clone();
        second.Field = $"{SecondBlade}.{first.Field}";
        second.Name = $"second blade's {first.Name}";
        return second;
    }

    private static Wire.PatternParameter ToWire(SecondBladeLimit limit) =>
        WithDefault(
            new Wire.PatternParameter
            {
                Field = $"{SecondBlade}.{limit.Field}",
                Name = limit.Name,
                Meaning = limit.Meaning,
                Unit = "mm",
                Least = limit.Least,
                Most = limit.Most,
                Follows = limit.Follows ?? "",
            },
            limit.Default
        );

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

    private static Wire.PatternParameter ToWire(PatternLimit limit) =>
        WithDefault(
            new Wire.PatternParameter
            {
                Field = limit.Path,
                Name = limit.Name,
                Meaning = limit.Meaning,
                Unit = limit.Unit,
                Least = limit.Least,
                Most = limit.Most,
                Follows = limit.Follows ?? "",
            },
            limit.Default
        );

    private static Wire.PatternParameter WithDefault(Wire.PatternParameter parameter, double? value)
    {
        if (value is { } given)
        {
            parameter.DefaultValue = given;
        }

        return parameter;
    }

    // ClipPoint is "clip point".
    private static string WordOf(BladeFamily family) =>
        string.Concat(
                family.ToString().Select((letter, i) => i > 0 && char.IsUpper(letter) ? $" {letter}" : $"{letter}")
            )
            .ToLowerInvariant();
}
