using Flushback.Cli.Arguments;
using Flushback.Contract.V1;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Flushback.Cli.Commands;

/// <summary>Reads a file of passes: YAML, a list named <c>passes</c>, each with its verb and place and its amounts.</summary>
internal static class PassFile
{
    /// <summary>The passes of a file, in their order.</summary>
    /// <exception cref="BadInputException">There is no such file, or it holds no passes: one sentence with the line.</exception>
    public static async Task<IReadOnlyList<Pass>> ReadAsync(string path, CancellationToken cancellation)
    {
        byte[] bytes = await DrawingFile.ReadAsync(path, cancellation);
        YamlStream yaml = [];
        try
        {
            using StreamReader reader = new(new MemoryStream(bytes));
            yaml.Load(reader);
        }
        catch (YamlException fault)
        {
            throw Bad(path, fault.Start, $"cannot be read as YAML: {fault.Message}");
        }

        YamlNode? root = yaml.Documents.Count > 0 ? yaml.Documents[0].RootNode : null;
        YamlNode? list = (root as YamlMappingNode)
            ?.Children.FirstOrDefault(child => child.Key is YamlScalarNode { Value: "passes" })
            .Value;
        return list is YamlSequenceNode { Children.Count: > 0 } passes
            ? [.. passes.Children.Select(node => PassOf(path, node))]
            : throw Bad(
                path,
                list?.Start ?? Mark.Empty,
                "holds no passes; begin it with 'passes:' and give each pass as '- round: open-corner' with its amounts below."
            );
    }

    private static Pass PassOf(string path, YamlNode node)
    {
        if (node is not YamlMappingNode mapping)
        {
            throw Bad(
                path,
                node.Start,
                "has something that is no pass; write '- round: open-corner' and its amounts below."
            );
        }

        (string Verb, string Place)? said = null;
        Dictionary<string, string> amounts = new(StringComparer.OrdinalIgnoreCase);
        foreach ((YamlNode key, YamlNode value) in mapping.Children)
        {
            if (key is not YamlScalarNode { Value: { } name } || value is not YamlScalarNode { Value: { } text })
            {
                throw Bad(path, key.Start, "has an amount that is no single word; write a name, a colon and a value.");
            }

            if (!PassWords.Verbs.Contains(name, StringComparer.OrdinalIgnoreCase))
            {
                amounts.Add(name, text);
            }
            else if (said is null)
            {
                said = (name, text);
            }
            else
            {
                throw Bad(path, key.Start, "says two things to do in one pass; begin each pass with its own '-'.");
            }
        }

        if (said is not { } pass)
        {
            throw Bad(
                path,
                mapping.Start,
                $"has a pass that says nothing to do; name one of {string.Join(", ", PassWords.Verbs)}."
            );
        }

        PassWords words = new(pass.Verb, pass.Place, amounts);
        return words.ToPass() ?? throw Bad(path, mapping.Start, words.Complaint!);
    }

    private static BadInputException Bad(string path, Mark at, string what) =>
        new(FormattableString.Invariant($"'{path}', line {Math.Max(1, at.Line)}: {what}"));
}
