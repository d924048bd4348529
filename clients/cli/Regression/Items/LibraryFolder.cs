using Flushback.Cli.Commands;

namespace Flushback.Cli.Regression.Items;

/// <summary>A folder with drawings and patterns, and everything below it but what is hidden.</summary>
/// <param name="Root">The folder.</param>
/// <param name="Items">Its drawings and patterns in the order of their paths, character by character.</param>
/// <param name="Orphans">Those that have a baseline and are not there any more, in the same order.</param>
internal sealed record LibraryFolder(string Root, IReadOnlyList<LibraryItem> Items, IReadOnlyList<LibraryItem> Orphans)
{
    private static readonly string[] _endings = [".dxf", ".yaml", ".yml"];

    /// <summary>Looks through the folder; links to folders are not followed, so that it has an end.</summary>
    /// <param name="root">The folder.</param>
    /// <param name="isLeftOut">Whether a file that could be an item is none.</param>
    /// <param name="output">Where results go, which are no items though they may lie below; null when nowhere.</param>
    /// <exception cref="BadInputException">There is no such folder, or it cannot be read.</exception>
    public static LibraryFolder Read(string root, Func<string, bool> isLeftOut, string? output)
    {
        if (!Directory.Exists(root))
        {
            throw new BadInputException(
                File.Exists(root)
                    ? $"'{root}' is a file; name the folder it lies in."
                    : $"There is no folder '{root}'; check its name."
            );
        }

        string full = Path.GetFullPath(root);
        string? aside = output is null ? null : Path.GetFullPath(output) + Path.DirectorySeparatorChar;
        try
        {
            List<string> files =
            [
                .. Directory
                    .EnumerateFiles(full, "*", Deep())
                    .Where(file => aside is null || !file.StartsWith(aside, StringComparison.Ordinal)),
            ];
            HashSet<string> there = [.. files];
            return new LibraryFolder(
                full,
                Ordered(files.Where(file => IsItem(file) && !isLeftOut(file)), full),
                Ordered(files.Where(IsBaseline).Select(WithoutEnding).Where(file => !there.Contains(file)), full)
            );
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"'{root}' cannot be read: {fault.Message}");
        }
    }

    private static bool IsItem(string file) =>
        Array.Exists(_endings, ending => file.EndsWith(ending, StringComparison.OrdinalIgnoreCase));

    private static bool IsBaseline(string file) =>
        file.EndsWith(LibraryItem.BaselineEnding, StringComparison.Ordinal) && IsItem(WithoutEnding(file));

    private static string WithoutEnding(string file) => file[..^LibraryItem.BaselineEnding.Length];

    private static LibraryItem[] Ordered(IEnumerable<string> files, string root) =>
        [
            .. files
                .Select(file => new LibraryItem(Path.GetRelativePath(root, file).Replace('\\', '/'), file))
                .OrderBy(item => item.Path, StringComparer.Ordinal),
        ];

    private static EnumerationOptions Deep() =>
        new()
        {
            RecurseSubdirectories = true,
            IgnoreInaccessible = false,
            AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
        };
}
