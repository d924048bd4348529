using Flushback.Cli.Regression.Baselines;
using Flushback.Cli.Regression.Items;

namespace Flushback.Cli.Regression.Running;

/// <summary>Every item of a library, and every one that is gone, held against its baseline, in the order of their paths.</summary>
internal static class Results
{
    /// <summary>The results.</summary>
    /// <param name="folder">The library.</param>
    /// <param name="answers">What became of its items, by path.</param>
    public static IReadOnlyList<ItemResult> Of(LibraryFolder folder, IReadOnlyDictionary<string, Answered> answers) =>
        [
            .. folder
                .Items.Select(item => Of(item, answers[item.Path]))
                .Concat(folder.Orphans.Select(Gone))
                .OrderBy(result => result.Path, StringComparer.Ordinal),
        ];

    private static ItemResult Of(LibraryItem item, Answered answered)
    {
        (Snapshot? before, string? fault) = BaselineOf(item);
        IReadOnlyList<string> errors = fault is null ? answered.Refused : [.. answered.Refused, fault];
        if (errors.Count > 0 || answered.Kept is not { } after)
        {
            return new ItemResult(item.Path, ItemOutcome.Error, before, answered.Kept, [], errors);
        }

        if (before is null)
        {
            return new ItemResult(item.Path, ItemOutcome.New, null, after, [], []);
        }

        IReadOnlyList<Change> changes = Comparison.Of(before, after);
        ItemOutcome outcome = changes.Count == 0 ? ItemOutcome.Same : ItemOutcome.Changed;
        return new ItemResult(item.Path, outcome, before, after, changes, []);
    }

    private static ItemResult Gone(LibraryItem item) =>
        new(item.Path, ItemOutcome.Gone, BaselineOf(item).Kept, null, [], []);

    private static (Snapshot? Kept, string? Fault) BaselineOf(LibraryItem item)
    {
        if (!File.Exists(item.BaselineFile))
        {
            return (null, null);
        }

        string name = item.Path + LibraryItem.BaselineEnding;
        try
        {
            return (BaselineText.Read(File.ReadAllText(item.BaselineFile)), null);
        }
        catch (FormatException bad)
        {
            return (null, $"The baseline '{name}' is none: {bad.Message}; put it right, or take it away.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return (null, $"The baseline '{name}' cannot be read: {fault.Message}");
        }
    }
}
