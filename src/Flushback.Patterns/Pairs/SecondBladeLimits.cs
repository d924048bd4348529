using System.Collections.Immutable;

namespace Flushback.Patterns.Pairs;

/// <summary>What is known of one number that only a page of two blades has: one row of the table.</summary>
/// <param name="Field">Its field as a file writes it, the unit last: <c>front_mm</c>. Stable.</param>
/// <param name="Name">Its name in a sentence, without an article.</param>
/// <param name="Least">Least value allowed, in millimetres.</param>
/// <param name="Most">Greatest value allowed, in millimetres.</param>
/// <param name="Meaning">What it is, in one sentence.</param>
/// <param name="Read">The value on a page; null where it was left out.</param>
/// <param name="Follows">What it follows from when it is left out; null when it has a default of its own.</param>
public sealed record SecondBladeLimit(
    string Field,
    string Name,
    double Least,
    double Most,
    string Meaning,
    Func<SecondBladeParameters, double?> Read,
    string? Follows = null
)
{
    /// <summary>The value of a second blade with nothing changed; null when it follows from others.</summary>
    public double? Default => Read(new SecondBladeParameters());
}

/// <summary>The numbers of a second blade beside those that every blade has, with default, limits and meaning.</summary>
/// <remarks>Limits are those of pocket knives a hand can hold and a shop can cut (common practice, no source).</remarks>
public static class SecondBladeLimits
{
    /// <summary>All of them, in the order of the contract.</summary>
    public static ImmutableArray<SecondBladeLimit> All { get; } =
    [
        new(
            "front_mm",
            "second blade's front",
            2.5,
            20,
            "Distance from its pivot to the handle's end.",
            second => second.FrontMm,
            "as far in front of its tang as on the first blade"
        ),
        new(
            "first_thickness_mm",
            "first blade's thickness",
            0.5,
            8,
            "Thickness of the first blade.",
            second => second.FirstThicknessMm
        ),
        new(
            "thickness_mm",
            "second blade's thickness",
            0.5,
            8,
            "Thickness of the second blade.",
            second => second.ThicknessMm
        ),
        new(
            "liner_between_mm",
            "liner between the springs",
            0,
            5,
            "Thickness of the liner between two springs, 0 for none.",
            second => second.LinerBetweenMm
        ),
        new(
            "least_clearance_mm",
            "least clearance of the blades",
            0,
            5,
            "Least wanted distance between the blades.",
            second => second.LeastClearanceMm
        ),
    ];

    /// <summary>One sentence for each number that lies outside its limits, in the order of the table, with its field.</summary>
    public static IEnumerable<PatternConflict> Violations(SecondBladeParameters second) =>
        All.Where(limit => limit.Read(second) is { } value && !(value >= limit.Least && value <= limit.Most))
            .Select(limit => new PatternConflict(
                FormattableString.Invariant(
                    $"The {limit.Name} is {limit.Read(second):0.###} mm; it has to lie between {limit.Least:0.###} and {limit.Most:0.###} mm."
                ),
                [limit.Field]
            ));
}
