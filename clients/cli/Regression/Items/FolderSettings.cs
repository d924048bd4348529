using Flushback.Cli.Arguments;
using Flushback.Cli.Commands;
using Flushback.Cli.Regression.Baselines;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Flushback.Cli.Regression.Items;

/// <summary>What <see cref="FileName"/> in a folder says: how its files and those below are checked.</summary>
internal sealed class FolderSettings
{
    /// <summary>Name of the file, in any folder of a library.</summary>
    public const string FileName = "library.yaml";

    private static readonly string[] _sections = ["all", "files", "leave-out", "within"];

    private FolderSettings(string path) => File = path;

    /// <summary>Where it says so.</summary>
    public string File { get; }

    /// <summary>Options of every file of the folder and below, by name without hyphens in front.</summary>
    public Dictionary<string, string[]> All { get; private init; } = [];

    /// <summary>Options of single files of the folder, by the name of the file.</summary>
    public Dictionary<string, Dictionary<string, string[]>> Files { get; private init; } = [];

    /// <summary>Names of files of the folder that are no items.</summary>
    public HashSet<string> LeftOut { get; private init; } = [];

    /// <summary>How far a number of a new baseline may be off, by unit.</summary>
    public Dictionary<string, double> Within { get; private init; } = [];

    /// <summary>The settings of a folder; null where it has none.</summary>
    /// <exception cref="BadInputException">The file cannot be read, or says something that is none: a sentence with the line.</exception>
    public static FolderSettings? Of(string folder)
    {
        string path = Path.Combine(folder, FileName);
        return System.IO.File.Exists(path) ? Read(path) : null;
    }

    private static FolderSettings Read(string path)
    {
        YamlStream yaml = [];
        try
        {
            using StreamReader reader = new(path);
            yaml.Load(reader);
        }
        catch (YamlException fault)
        {
            throw Bad(path, fault.Start, $"cannot be read as YAML: {fault.Message}");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"'{path}' cannot be read: {fault.Message}");
        }

        YamlNode? root = yaml.Documents.Count > 0 ? yaml.Documents[0].RootNode : null;
        Dictionary<string, YamlNode> sections = root is null ? [] : Children(path, root);
        if (sections.FirstOrDefault(section => !_sections.Contains(section.Key)) is { Key: { } unknown } other)
        {
            throw Bad(path, other.Value.Start, $"has '{unknown}', which is none of {string.Join(", ", _sections)}.");
        }

        return new FolderSettings(path)
        {
            All = Options(path, sections.GetValueOrDefault("all")),
            Files = Section(path, sections.GetValueOrDefault("files"))
                .ToDictionary(file => file.Key, file => Options(path, file.Value)),
            LeftOut = [.. sections.GetValueOrDefault("leave-out") is { } names ? Words(path, names) : []],
            Within = Section(path, sections.GetValueOrDefault("within"))
                .ToDictionary(unit => unit.Key, unit => Allowance(path, unit.Key, unit.Value)),
        };
    }

    private static double Allowance(string path, string unit, YamlNode node)
    {
        if (!Allowances.Usual.ContainsKey(unit))
        {
            throw Bad(path, node.Start, $"has '{unit}', which is none of {string.Join(", ", Allowances.Usual.Keys)}.");
        }

        string word = Words(path, node)[0];
        return Number.TryParse(word, out double value) && value > 0
            ? value
            : throw Bad(path, node.Start, $"allows '{word}' {unit}, which is no number above zero.");
    }

    private static Dictionary<string, string[]> Options(string path, YamlNode? node) =>
        Section(path, node).ToDictionary(option => option.Key, option => Words(path, option.Value));

    private static Dictionary<string, YamlNode> Section(string path, YamlNode? node) =>
        node is null or YamlScalarNode { Value: "" } ? [] : Children(path, node);

    private static Dictionary<string, YamlNode> Children(string path, YamlNode node)
    {
        if (node is not YamlMappingNode mapping)
        {
            throw Bad(
                path,
                node.Start,
                "has a word where names with values are wanted; write a name, a colon and a value."
            );
        }

        Dictionary<string, YamlNode> children = [];
        foreach ((YamlNode key, YamlNode value) in mapping.Children)
        {
            children.Add(Words(path, key)[0], value);
        }

        return children;
    }

    // A value, or a list of them for an option that may be repeated.
    private static string[] Words(string path, YamlNode node) =>
        node switch
        {
            YamlScalarNode { Value: { } word } => [word],
            YamlSequenceNode list => [.. list.Children.SelectMany(child => Words(path, child))],
            _ => throw Bad(path, node.Start, "has a value that is no single word and no list of them."),
        };

    private static BadInputException Bad(string path, Mark at, string what) =>
        new(FormattableString.Invariant($"'{path}', line {Math.Max(1, at.Line)}: {what}"));
}
