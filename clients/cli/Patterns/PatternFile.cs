using Flushback.Cli.Commands;
using Flushback.Contract.V1;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Flushback.Cli.Patterns;

/// <summary>A page of dimensions with the name that stands in it.</summary>
/// <param name="Name">What the page calls the knife; null when it does not say.</param>
/// <param name="Pattern">The dimensions.</param>
/// <param name="Free">Fields of the dimensions that the page names as free to be changed.</param>
internal sealed record NamedPattern(string? Name, Pattern Pattern, IReadOnlyList<string> Free)
{
    /// <summary>How two blades share the handle; unspecified where the page does not say.</summary>
    public Arrangement Arrangement { get; init; }

    /// <summary>The second blade; null where the page has none.</summary>
    public SecondBlade? SecondBlade { get; init; }
}

/// <summary>Reads a page of dimensions: YAML, the groups of the contract with their fields below them.</summary>
internal static class PatternFile
{
    private const string NameKey = "name";
    private const string FreeKey = "free";
    private const string ArrangementKey = "arrangement";
    private const string SecondKey = "second-blade";

    /// <summary>The pattern of a file.</summary>
    /// <exception cref="BadInputException">There is no such file, or it is no page of dimensions: one sentence with line and column.</exception>
    public static async Task<NamedPattern> ReadAsync(string path, CancellationToken cancellation) =>
        Read(path, await DrawingFile.ReadAsync(path, cancellation));

    /// <summary>The pattern in the bytes of a file.</summary>
    /// <inheritdoc cref="ReadAsync"/>
    public static NamedPattern Read(string path, byte[] bytes)
    {
        if (RootOf(path, bytes) is not { } root)
        {
            return new NamedPattern(null, new Pattern(), []);
        }

        string? name = null;
        IReadOnlyList<string> free = [];
        GenerateRequest pair = new();
        Pattern pattern = new();
        foreach ((YamlNode key, YamlNode value) in root.Children)
        {
            string word = WordOf(path, key);
            if (word.Equals(NameKey, StringComparison.OrdinalIgnoreCase))
            {
                name = TextOf(path, word, value);
                continue;
            }

            if (word.Equals(FreeKey, StringComparison.OrdinalIgnoreCase))
            {
                free = ReadFree(path, value);
                continue;
            }

            if (PatternKeys.Of(word).ToLowerInvariant() is ArrangementKey or SecondKey)
            {
                ReadField(path, pair, PatternKeys.Find(GenerateRequest.Descriptor, word)!, word, value);
                continue;
            }

            FieldDescriptor field =
                PatternKeys.Find(Pattern.Descriptor, word) ?? throw Unknown(path, key, word, Pattern.Descriptor, "");
            IMessage group = (IMessage)(field.Accessor.GetValue(pattern) ?? field.MessageType.Parser.ParseFrom([]));
            ReadGroup(path, group, word, value);
            field.Accessor.SetValue(pattern, group);
        }

        return new NamedPattern(name, pattern, free) { Arrangement = pair.Arrangement, SecondBlade = pair.SecondBlade };
    }

    private static void ReadGroup(string path, IMessage group, string groupName, YamlNode node)
    {
        if (node is YamlScalarNode { Value: null or "" })
        {
            return;
        }

        if (node is not YamlMappingNode mapping)
        {
            throw Bad(path, node.Start, $"'{groupName}' holds no dimensions; write each below it as 'height: 5 mm'.");
        }

        foreach ((YamlNode key, YamlNode value) in mapping.Children)
        {
            string word = WordOf(path, key);
            FieldDescriptor field =
                PatternKeys.Find(group.Descriptor, word)
                ?? throw Unknown(path, key, word, group.Descriptor, $" in '{groupName}'");
            ReadField(path, group, field, word, value);
        }
    }

    private static void ReadField(string path, IMessage group, FieldDescriptor field, string word, YamlNode value)
    {
        if (field.FieldType == FieldType.Message)
        {
            IMessage inner = field.MessageType.Parser.ParseFrom([]);
            ReadGroup(path, inner, word, value);
            field.Accessor.SetValue(group, inner);
            return;
        }

        string text = TextOf(path, word, value);
        object read = PatternValue.Read(field, text, out string complaint) ?? throw Bad(path, value.Start, complaint);
        field.Accessor.SetValue(group, read);
    }

    private static List<string> ReadFree(string path, YamlNode node)
    {
        if (node is not YamlSequenceNode list)
        {
            throw Bad(path, node.Start, "'free' is a list of dimensions; write [spring.preload, pins.centre-behind].");
        }

        List<string> free = [];
        foreach (YamlNode item in list.Children)
        {
            string word = TextOf(path, FreeKey, item);
            IReadOnlyList<string> fields = PatternKeys.FieldsOf(word);
            free.AddRange(
                fields.Count > 0
                    ? fields
                    : throw Bad(
                        path,
                        item.Start,
                        $"'{word}' names no dimension that can be changed; write a group and a dimension, such as spring.preload, or a group, such as spring."
                    )
            );
        }

        return [.. free.Distinct()];
    }

    private static YamlMappingNode? RootOf(string path, byte[] bytes)
    {
        YamlStream yaml = [];
        try
        {
            using StreamReader reader = new(new MemoryStream(bytes));
            yaml.Load(reader);
        }
        catch (YamlException fault)
        {
            throw Bad(path, fault.Start, $"this cannot be read as YAML: {fault.Message}");
        }

        return yaml.Documents.Count == 0 ? null
            : yaml.Documents.Count > 1
                ? throw Bad(
                    path,
                    yaml.Documents[1].RootNode.Start,
                    "a second page begins here; keep each knife in a file of its own."
                )
            : yaml.Documents[0].RootNode is YamlMappingNode root ? root
            : throw Bad(
                path,
                yaml.Documents[0].RootNode.Start,
                "this is no page of dimensions; begin with a group such as 'handle:' and its dimensions below, or with generate --new."
            );
    }

    private static string WordOf(string path, YamlNode key) =>
        key is YamlScalarNode { Value: { Length: > 0 } word }
            ? word
            : throw Bad(path, key.Start, "the name of a dimension is missing; write a name, a colon and a value.");

    private static string TextOf(string path, string word, YamlNode value) =>
        value is YamlScalarNode { Value: { Length: > 0 } text }
            ? text
            : throw Bad(
                path,
                value.Start,
                $"'{word}' has no value; write one behind the colon, or leave the line out."
            );

    private static BadInputException Unknown(
        string path,
        YamlNode key,
        string word,
        MessageDescriptor message,
        string where
    )
    {
        string[] known = [.. message.Fields.InDeclarationOrder().Select(field => PatternKeys.Of(field.Name))];
        if (where.Length == 0)
        {
            known = [NameKey, FreeKey, ArrangementKey, SecondKey, .. known];
        }

        return Bad(path, key.Start, $"there is no '{word}'{where}; {PatternKeys.Advice(known, word)}");
    }

    private static BadInputException Bad(string path, Mark at, string what) =>
        new(
            FormattableString.Invariant(
                $"'{path}', line {Math.Max(1, at.Line)}, column {Math.Max(1, at.Column)}: {what}"
            )
        );
}
