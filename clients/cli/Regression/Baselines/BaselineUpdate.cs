using Flushback.Cli.Commands;
using Flushback.Cli.Output;
using Flushback.Cli.Regression.Items;
using Flushback.Cli.Regression.Running;
using Google.Protobuf;

namespace Flushback.Cli.Regression.Baselines;

/// <summary>Takes what is now for what is wanted: writes the baselines that differ, takes those away whose item is gone.</summary>
internal static class BaselineUpdate
{
    /// <summary>Writes all of them, or none; items that could not be checked keep theirs.</summary>
    /// <returns>What was done, a line a baseline.</returns>
    /// <exception cref="BadInputException">A baseline cannot be written, or taken away.</exception>
    public static IReadOnlyList<string> Make(LibraryFolder folder, IReadOnlyList<ItemResult> results)
    {
        ItemResult[] written = [.. results.Where(result => result.Outcome is ItemOutcome.Changed or ItemOutcome.New)];
        OutputFiles.Write(
            written.Select(result => new OutputFile(FileOf(folder, result), ByteString.CopyFromUtf8(TextOf(result)))),
            folder.Root
        );
        ItemResult[] gone = [.. results.Where(result => result.Outcome == ItemOutcome.Gone)];
        foreach (ItemResult result in gone)
        {
            TakeAway(FileOf(folder, result));
        }

        return
        [
            .. written
                .Concat(gone)
                .OrderBy(result => result.Path, StringComparer.Ordinal)
                .Select(result => $"{DoneWith(result), -11}{result.Path}{LibraryItem.BaselineEnding}"),
        ];
    }

    private static string TextOf(ItemResult result) =>
        BaselineText.Write(
            result.Before is { } before ? Comparison.WithAllowancesOf(before, result.After!) : result.After!
        );

    private static string FileOf(LibraryFolder folder, ItemResult result) =>
        Path.Combine(folder.Root, result.Path) + LibraryItem.BaselineEnding;

    private static string DoneWith(ItemResult result) =>
        result.Outcome switch
        {
            ItemOutcome.New => "written",
            ItemOutcome.Changed => "renewed",
            _ => "taken away",
        };

    private static void TakeAway(string file)
    {
        try
        {
            File.Delete(file);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"'{file}' cannot be taken away: {fault.Message}");
        }
    }
}
