using Flushback.Cli.Regression.Running;

namespace Flushback.Cli.Regression.Telling;

/// <summary>Outcomes in words.</summary>
internal static class Words
{
    /// <summary>All outcomes, in the order in which they are told.</summary>
    public static IReadOnlyList<ItemOutcome> Outcomes { get; } = Enum.GetValues<ItemOutcome>();

    /// <summary>An outcome.</summary>
    public static string Of(ItemOutcome outcome) => $"{outcome}".ToLowerInvariant();

    /// <summary>What stands above the items of an outcome that is not as before.</summary>
    public static string Heading(ItemOutcome outcome) =>
        outcome switch
        {
            ItemOutcome.Changed => "Changed:",
            ItemOutcome.New => "New, without a baseline; --update writes one:",
            ItemOutcome.Gone => "Gone, with a baseline left; --update takes it away:",
            ItemOutcome.Error => "Not checked:",
            _ => "As before:",
        };

    /// <summary>How many items have an outcome.</summary>
    public static int Count(IReadOnlyList<ItemResult> results, ItemOutcome outcome) =>
        results.Count(result => result.Outcome == outcome);
}
