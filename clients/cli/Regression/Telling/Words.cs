using Flushback.Cli.Regression.Running;

namespace Flushback.Cli.Regression.Telling;

/// <summary>Outcomes in words.</summary>
internal static class Words
{
    /// <summary>All outcomes, in the order in which they are told.</summary>
    public static IReadOnlyList<ItemOutcome> Outcomes { get; } = Enum.GetValues<ItemOutcome>();

    /// <summary>An outcome.</summary>
    public static string Of(ItemOutcome outcome) => $"{outcome}".ToLowerInvariant();

    /// <summary>How many items have an outcome.</summary>
    public static int Count(IReadOnlyList<ItemResult> results, ItemOutcome outcome) =>
        results.Count(result => result.Outcome == outcome);
}
