using Flushback.Cli.Regression.Baselines;

namespace Flushback.Cli.Regression.Running;

/// <summary>How an item compares with its baseline.</summary>
internal enum ItemOutcome
{
    /// <summary>As in the baseline.</summary>
    Same,

    /// <summary>Not as in the baseline.</summary>
    Changed,

    /// <summary>It has no baseline.</summary>
    New,

    /// <summary>It has a baseline and is not there any more.</summary>
    Gone,

    /// <summary>It could not be checked, or its baseline could not be read.</summary>
    Error,
}

/// <summary>An item and how it compares with its baseline.</summary>
/// <param name="Path">Its path within the library.</param>
/// <param name="Outcome">How it compares.</param>
/// <param name="Before">The baseline; null when there is none.</param>
/// <param name="After">What it is now; null when it could not be checked.</param>
/// <param name="Changes">What is not as before.</param>
/// <param name="Errors">Why it could not be checked, in sentences.</param>
internal sealed record ItemResult(
    string Path,
    ItemOutcome Outcome,
    Snapshot? Before,
    Snapshot? After,
    IReadOnlyList<Change> Changes,
    IReadOnlyList<string> Errors
)
{
    /// <summary>The sentences that say what is the matter; none when all is as before.</summary>
    public IEnumerable<string> Sentences =>
        Outcome switch
        {
            ItemOutcome.Changed => Changes.Select(change => change.Sentence),
            ItemOutcome.New => ["It has no baseline; --update writes one."],
            ItemOutcome.Gone => ["It has a baseline and is not there any more; --update takes the baseline away."],
            _ => Errors,
        };
}
