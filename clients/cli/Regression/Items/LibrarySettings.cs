using Flushback.Cli.Commands;
using Flushback.Cli.Regression.Baselines;

namespace Flushback.Cli.Regression.Items;

/// <summary>The settings of all folders of a library: what an inner folder says goes over what an outer one does.</summary>
/// <param name="root">The library's folder.</param>
internal sealed class LibrarySettings(string root)
{
    private readonly string _root = Path.GetFullPath(root);
    private readonly Dictionary<string, FolderSettings?> _folders = [];

    /// <summary>Whether a file that could be an item is none: the settings themselves, and what they leave out.</summary>
    /// <exception cref="BadInputException">The settings cannot be read.</exception>
    public bool IsLeftOut(string file) =>
        Path.GetFileName(file) == FolderSettings.FileName
        || In(Path.GetDirectoryName(file)!)?.LeftOut.Contains(Path.GetFileName(file)) == true;

    /// <summary>The options of a file, each with the settings file that gives it, by name.</summary>
    /// <exception cref="BadInputException">The settings cannot be read.</exception>
    public IReadOnlyDictionary<string, GivenOption> OptionsOf(LibraryItem item)
    {
        SortedDictionary<string, GivenOption> options = new(StringComparer.Ordinal);
        foreach (FolderSettings settings in Around(item))
        {
            Put(options, settings.All, settings.File, isForAll: true);
        }

        string folder = Path.GetDirectoryName(item.File)!;
        if (In(folder) is { } own && own.Files.TryGetValue(Path.GetFileName(item.File), out var named))
        {
            Put(options, named, own.File, isForAll: false);
        }

        return options;
    }

    /// <summary>How far a number of a new baseline may be off, by unit.</summary>
    /// <exception cref="BadInputException">The settings cannot be read.</exception>
    public IReadOnlyDictionary<string, double> WithinOf(LibraryItem item)
    {
        Dictionary<string, double> within = new(Allowances.Usual);
        foreach (FolderSettings settings in Around(item))
        {
            foreach ((string unit, double value) in settings.Within)
            {
                within[unit] = value;
            }
        }

        return within;
    }

    // From the library's own folder inward.
    private IEnumerable<FolderSettings> Around(LibraryItem item)
    {
        Stack<string> folders = [];
        for (string? folder = Path.GetDirectoryName(item.File); folder is not null; )
        {
            folders.Push(folder);
            folder = folder == _root ? null : Path.GetDirectoryName(folder);
        }

        return folders.Select(In).OfType<FolderSettings>();
    }

    private FolderSettings? In(string folder)
    {
        if (!_folders.TryGetValue(folder, out FolderSettings? settings))
        {
            settings = FolderSettings.Of(folder);
            _folders.Add(folder, settings);
        }

        return settings;
    }

    private static void Put(
        SortedDictionary<string, GivenOption> options,
        Dictionary<string, string[]> given,
        string file,
        bool isForAll
    )
    {
        foreach ((string name, string[] values) in given)
        {
            options[name] = new GivenOption(values, file, isForAll);
        }
    }
}

/// <summary>An option that a settings file gives.</summary>
/// <param name="Values">Its values, more than one when it is repeated.</param>
/// <param name="File">The settings file.</param>
/// <param name="IsForAll">True when it is given for a folder, and so also for files that it does not concern.</param>
internal sealed record GivenOption(IReadOnlyList<string> Values, string File, bool IsForAll);
